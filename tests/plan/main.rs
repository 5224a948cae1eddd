//! The hole plan, case by case, and its drawings.

mod bearing;
mod cases;
mod choices;
mod drawing;
mod finishing;
mod limits;
mod machines;
mod placed;
mod sheet;
mod steps;
mod table;
mod taper;
mod thin;
mod warnings;
