# explain
