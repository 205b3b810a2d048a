//! Small dense linear algebra for the proposals: Cholesky factor, triangular solves.

/// A symmetric positive definite matrix' lower Cholesky factor, row by row.
pub struct Cholesky {
    n: usize,
    l: Vec<f64>,
}

impl Cholesky {
    /// Factor of `a` (`n × n`, row by row); `None` when it is not positive definite.
    #[must_use]
    pub fn new(a: &[f64], n: usize) -> Option<Cholesky> {
        let mut l = vec![0.0; n * n];
        for i in 0..n {
            for j in 0..=i {
                let mut sum = a[i * n + j];
                for k in 0..j {
                    sum -= l[i * n + k] * l[j * n + k];
                }
                if i == j {
                    if !(sum > 0.0) {
                        return None;
                    }
                    l[i * n + i] = sum.sqrt();
                } else {
                    l[i * n + j] = sum / l[j * n + j];
                }
            }
        }
        Some(Cholesky { n, l })
    }

    /// Solves `L y = b` in place.
    pub fn forward(&self, b: &mut [f64]) {
        for i in 0..self.n {
            let mut sum = b[i];
            for k in 0..i {
                sum -= self.l[i * self.n + k] * b[k];
            }
            b[i] = sum / self.l[i * self.n + i];
        }
    }

    /// Solves `Lᵀ x = y` in place.
    pub fn backward(&self, y: &mut [f64]) {
        for i in (0..self.n).rev() {
            let mut sum = y[i];
            for k in i + 1..self.n {
                sum -= self.l[k * self.n + i] * y[k];
            }
            y[i] = sum / self.l[i * self.n + i];
        }
    }

    /// Solves `A x = b` in place.
    pub fn solve(&self, b: &mut [f64]) {
        self.forward(b);
        self.backward(b);
    }

    /// `yᵀ A y = |Lᵀ y|²`.
    #[must_use]
    pub fn quadratic(&self, y: &[f64]) -> f64 {
        let mut sum = 0.0;
        for i in 0..self.n {
            let mut dot = 0.0;
            for k in i..self.n {
                dot += self.l[k * self.n + i] * y[k];
            }
            sum += dot * dot;
        }
        sum
    }

    /// `ln det A`.
    #[must_use]
    pub fn log_determinant(&self) -> f64 {
        2.0 * (0..self.n).map(|i| self.l[i * self.n + i].ln()).sum::<f64>()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solves_a_small_system() {
        let a = [4.0, 2.0, 0.6, 2.0, 5.0, 1.0, 0.6, 1.0, 3.0];
        let factor = Cholesky::new(&a, 3).unwrap();
        let mut x = [1.0, 2.0, 3.0];
        factor.solve(&mut x);
        for i in 0..3 {
            let row: f64 = (0..3).map(|j| a[3 * i + j] * x[j]).sum();
            assert!((row - (i as f64 + 1.0)).abs() < 1e-12);
        }
    }
}
