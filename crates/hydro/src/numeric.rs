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

#[cfg(test)]
mod tests {
    use super::root;

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
