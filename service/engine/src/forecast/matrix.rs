//! Small dense symmetric matrices: Cholesky factor and the solutions with it. No engineering
//! here; every sum runs in a fixed order.

/// A lower triangular factor, row by row.
#[derive(Debug, Clone)]
pub struct Factor {
    size: usize,
    cells: Vec<f64>,
}

/// Sum of the products of two lists.
pub fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).fold(0.0, |sum, (x, y)| sum + x * y)
}

impl Factor {
    /// Cholesky factor of a symmetric positive definite matrix given by its cells; `None`
    /// where it is not positive definite.
    pub fn of(size: usize, cell: impl Fn(usize, usize) -> f64) -> Option<Self> {
        let mut cells = vec![0.0; size * size];
        for i in 0..size {
            for j in 0..=i {
                let (row_i, row_j) = (&cells[i * size..][..j], &cells[j * size..][..j]);
                let rest = cell(i, j) - dot(row_i, row_j);
                cells[i * size + j] = if i == j {
                    if rest.is_nan() || rest <= 0.0 {
                        return None;
                    }
                    rest.sqrt()
                } else {
                    rest / cells[j * size + j]
                };
            }
        }
        Some(Self { size, cells })
    }

    /// Solution of L x = b.
    pub fn forward(&self, b: &[f64]) -> Vec<f64> {
        let mut x = Vec::with_capacity(self.size);
        for i in 0..self.size {
            let row = &self.cells[i * self.size..][..self.size];
            let rest = b[i] - dot(&row[..i], &x);
            x.push(rest / row[i]);
        }
        x
    }

    /// Solution of L' x = b.
    pub fn backward(&self, b: &[f64]) -> Vec<f64> {
        let mut x = b.to_vec();
        for i in (0..self.size).rev() {
            x[i] /= self.cells[i * self.size + i];
            for j in 0..i {
                x[j] -= self.cells[i * self.size + j] * x[i];
            }
        }
        x
    }

    /// Logarithm of the determinant of the matrix.
    pub fn log_determinant(&self) -> f64 {
        (0..self.size).fold(0.0, |sum, i| {
            sum + 2.0 * crate::math::ln(self.cells[i * self.size + i])
        })
    }
}
