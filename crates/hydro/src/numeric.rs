//! Small numerical tools: a bracketed root, a monotone table.

/// Root of `f` between `low` and `high` by the Illinois variant of the secant rule; needs a change of sign.
///
/// Returns `None` when the ends do not bracket a root or a value is not finite.
pub fn root(mut low: f64, mut high: f64, tolerance: f64, mut f: impl FnMut(f64) -> f64) -> Option<f64> {
    let (mut f_low, mut f_high) = (f(low), f(high));
    if f_low == 0.0 {
        return Some(low);
    }
    if f_high == 0.0 {
        return Some(high);
    }
    let bracketed = f_low * f_high < 0.0;
    if !bracketed {
        return None;
    }
    let mut side = 0_i8;
    for _ in 0..100 {
        let x = (low * f_high - high * f_low) / (f_high - f_low);
        if !x.is_finite() {
            return None;
        }
        let f_x = f(x);
        if f_x == 0.0 || (high - low).abs() <= tolerance {
            return Some(x);
        }
        if f_x * f_high < 0.0 {
            let converged = (x - high).abs() <= tolerance;
            low = high;
            f_low = f_high;
            high = x;
            f_high = f_x;
            side = 0;
            if converged {
                return Some(x);
            }
        } else {
            let converged = (x - high).abs() <= tolerance;
            high = x;
            f_high = f_x;
            if side == 1 {
                f_low *= 0.5;
            }
            side = 1;
            if converged {
                return Some(x);
            }
        }
    }
    Some(0.5 * (low + high))
}

/// A root of `f` between two ends whose values are known and of opposite sign, to `tolerance` in `x`: inverse quadratic
/// interpolation where it is safe, else halving (Chandrupatla 1997), begun by the chord. An end without a value, or two of
/// one sign: `None`.
#[must_use]
pub fn root_between(low: (f64, f64), high: (f64, f64), tolerance: f64, mut f: impl FnMut(f64) -> f64) -> Option<f64> {
    let ((mut a, mut f_a), (mut b, mut f_b)) = (low, high);
    if f_a == 0.0 || f_b == 0.0 {
        return Some(if f_a == 0.0 { a } else { b });
    }
    let bracketed = f_a * f_b < 0.0;
    if !bracketed {
        return None;
    }
    let mut t = (f_a / (f_a - f_b)).clamp(0.01, 0.99);
    for _ in 0..100 {
        let x = a + t * (b - a);
        let f_x = f(x);
        if f_x.is_nan() {
            return None;
        }
        let (c, f_c);
        if (f_x > 0.0) == (f_a > 0.0) {
            (c, f_c) = (a, f_a);
        } else {
            (c, f_c) = (b, f_b);
            (b, f_b) = (a, f_a);
        }
        (a, f_a) = (x, f_x);
        let closest = if f_a.abs() < f_b.abs() { a } else { b };
        let least = 0.5 * tolerance / (b - a).abs();
        if f_a == 0.0 || least > 0.25 || least.is_nan() {
            return Some(closest);
        }
        let (xi, phi) = ((a - b) / (c - b), (f_a - f_b) / (f_c - f_b));
        let safe = phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi;
        t = if safe {
            f_a / (f_b - f_a) * f_c / (f_b - f_c) + (c - a) / (b - a) * f_a / (f_c - f_a) * f_b / (f_c - f_b)
        } else {
            0.5
        };
        t = t.max(least).min(1.0 - least);
    }
    Some(a)
}

#[cfg(test)]
mod tests {
    use super::{root, root_between};

    #[test]
    fn a_root_between_known_ends_in_few_steps() {
        type Case = (&'static dyn Fn(f64) -> f64, f64, f64, f64);
        let cases: [Case; 4] = [
            (&|x| x * x * x - 2.0, 0.0, 2.0, 2.0_f64.cbrt()),
            (&|x| x.cos() - x, 0.0, 1.0, 0.739_085_133_215_160_6),
            (&|x| (x - 0.3).signum() * (x - 0.3).abs().sqrt(), 0.0, 1.0, 0.3),
            (&|x| 1.0 - (20.0 * x).exp() * 1e-6, 0.0, 1.0, 0.690_775_527_898_213_7),
        ];
        for (f, low, high, want) in cases {
            let mut calls = 0;
            let x = root_between((low, f(low)), (high, f(high)), 1e-11, |x| {
                calls += 1;
                f(x)
            });
            assert!((x.unwrap() - want).abs() < 1e-11, "{x:?} for {want}");
            assert!(calls < 45, "{calls}");
        }
        assert_eq!(root_between((0.0, 1.0), (1.0, 2.0), 1e-9, |x| 1.0 + x), None);
        assert_eq!(root_between((0.0, f64::NAN), (1.0, 2.0), 1e-9, |x| 1.0 + x), None);
        assert_eq!(root_between((0.0, 0.0), (1.0, 2.0), 1e-9, |x| x), Some(0.0));
    }

    #[test]
    fn finds_the_root_of_a_cubic() {
        let x = root(0.0, 2.0, 1e-12, |x| x * x * x - 2.0).unwrap();
        assert!((x - 2.0_f64.cbrt()).abs() < 1e-10, "{x}");
    }

    #[test]
    fn takes_a_root_at_either_end_and_refuses_what_is_no_number() {
        assert_eq!(root(0.0, 1.0, 1e-9, |x| x), Some(0.0));
        assert_eq!(root(-1.0, 0.0, 1e-9, |x| x), Some(0.0));
        assert!(root(0.0, 1.0, 1e-9, |_| f64::NAN).is_none());
        assert!(root(f64::NAN, 1.0, 1e-9, |x| x - 0.5).is_none());
    }

    #[test]
    fn closes_in_on_a_kink() {
        let x = root(0.0, 1.0, 1e-12, |x| if x < 0.3 { 0.001 } else { 0.001 - 50.0 * (x - 0.3) }).unwrap();
        assert!((x - 0.300_02).abs() < 1e-11, "{x}");
    }

    #[test]
    fn refuses_without_a_change_of_sign() {
        assert!(root(1.0, 2.0, 1e-9, |x| x * x + 1.0).is_none());
    }
}
