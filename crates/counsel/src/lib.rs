//! Judgement on definite boats.
