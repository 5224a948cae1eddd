//! The members: who gets in, who stays in, who may do what. A test begins with the line of the
//! quality bars that it holds: `s04_…`.

pub(crate) mod access;
mod club;
mod crowded;
mod forgery;
mod found;
mod joining;
mod leaving;
mod limits;
mod markup;
mod next;
mod observatory;
mod one_form;
mod open_slips;
mod passwords;
mod read_out;
mod records;
mod rights;
mod second_factor;
mod secrets;
mod sessions;
mod sheet;
mod sign_in;
mod silence;
mod spare_codes;
mod step_up;
mod the_club;
mod timing;
mod told;
