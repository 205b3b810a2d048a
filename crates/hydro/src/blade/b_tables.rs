//! Tables of the B-series blade.
