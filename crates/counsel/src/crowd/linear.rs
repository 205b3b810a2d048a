//! Small dense linear algebra for the proposals: Cholesky factor, triangular solves.

/// A symmetric positive definite matrix' Cholesky factor, kept both ways so that every loop runs along memory.
pub struct Cholesky {
    n: usize,
    /// `L`, row by row.
    l: Vec<f64>,
    /// `Lᵀ`, row by row.
    u: Vec<f64>,
}

impl Cholesky {
    /// Factor of `a` (`n × n`, row by row); `None` when it is not positive definite.
    #[must_use]
    pub fn new(a: &[f64], n: usize) -> Option<Cholesky> {
        let mut l = vec![0.0; n * n];
        for i in 0..n {
            for j in 0..=i {
                let dot: f64 = l[i * n..i * n + j].iter().zip(&l[j * n..j * n + j]).map(|(x, y)| x * y).sum();
                let rest = a[i * n + j] - dot;
                if i == j {
                    if rest.is_nan() || rest <= 0.0 {
                        return None;
                    }
                    l[i * n + i] = rest.sqrt();
                } else {
                    l[i * n + j] = rest / l[j * n + j];
                }
            }
        }
        let u = (0..n * n).map(|at| l[(at % n) * n + at / n]).collect();
        Some(Cholesky { n, l, u })
    }

    /// The inverse of `A`, row by row.
    #[must_use]
    pub fn inverse(&self) -> Vec<f64> {
        let mut inverse = vec![0.0; self.n * self.n];
        for (i, row) in inverse.chunks_mut(self.n).enumerate() {
            row[i] = 1.0;
            self.solve(row);
        }
        inverse
    }

    /// The factor `L K` of `L (K Kᵀ) Lᵀ`, where `K` is `inner`.
    #[must_use]
    pub fn after(&self, inner: &Cholesky) -> Cholesky {
        let n = self.n;
        let mut l = vec![0.0; n * n];
        for i in 0..n {
            for j in 0..=i {
                l[i * n + j] = (j..=i).map(|k| self.l[i * n + k] * inner.l[k * n + j]).sum();
            }
        }
        let u = (0..n * n).map(|at| l[(at % n) * n + at / n]).collect();
        Cholesky { n, l, u }
    }

    /// Solves `L y = b` in place.
    pub fn forward(&self, b: &mut [f64]) {
        for i in 0..self.n {
            let row = &self.l[i * self.n..(i + 1) * self.n];
            let dot: f64 = row[..i].iter().zip(&*b).map(|(l, x)| l * x).sum();
            b[i] = (b[i] - dot) / row[i];
        }
    }

    /// Solves `Lᵀ x = y` in place.
    pub fn backward(&self, y: &mut [f64]) {
        for i in (0..self.n).rev() {
            let row = &self.u[i * self.n..(i + 1) * self.n];
            let dot: f64 = row[i + 1..].iter().zip(&y[i + 1..]).map(|(u, x)| u * x).sum();
            y[i] = (y[i] - dot) / row[i];
        }
    }

    /// Solves `A x = b` in place.
    pub fn solve(&self, b: &mut [f64]) {
        self.forward(b);
        self.backward(b);
    }

    /// `L y`.
    #[must_use]
    pub fn times(&self, y: &[f64]) -> Vec<f64> {
        (0..self.n).map(|i| self.l[i * self.n..=i * self.n + i].iter().zip(y).map(|(l, y)| l * y).sum()).collect()
    }

    /// `Lᵀ y` in place.
    pub fn turn(&self, y: &mut [f64]) {
        for i in 0..self.n {
            y[i] = self.u[i * self.n + i..(i + 1) * self.n].iter().zip(&y[i..]).map(|(u, x)| u * x).sum();
        }
    }

    /// `yᵀ A y = |Lᵀ y|²`.
    #[must_use]
    pub fn quadratic(&self, y: &[f64]) -> f64 {
        (0..self.n)
            .map(|i| {
                let row = &self.u[i * self.n + i..(i + 1) * self.n];
                let dot: f64 = row.iter().zip(&y[i..]).map(|(u, x)| u * x).sum();
                dot * dot
            })
            .sum()
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
