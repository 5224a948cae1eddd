//! Clearance holes for the screw: close, medium and free, and the float they leave.
