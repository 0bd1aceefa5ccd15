//! What a child's feet do on a figure
