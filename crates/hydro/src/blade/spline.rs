//! Monotone spline.
