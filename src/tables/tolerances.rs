//! Printed tolerances on the nut's minor diameter.
