//! The rules of the members' shop notes: what a note is, who may do what to it, how its text is shown.
//!
//! - [`state`]: the states of a note, and every act with who may do it; [`refused`]: why not.
//! - [`fields`]: the fields of a note, each declared once.
//! - [`wording`]: one wording of a note, read from its form; [`belongs`]: the things it belongs to;
//!   [`meant`]: what a field nearly names; [`again`]: what becomes of a form by what stands when it comes.
//! - [`pressure`]: whether it speaks of boilers, steam or pressure, by what a reader sees ([`seen`], [`folded`]), the
//!   few words that count most even where they are misspelt or in pieces ([`strongest`]), parts that have their names
//!   from a bench too ([`fittings`], [`bars`]);
//!   [`inspection`]: whether the club has somebody to pass it then.
//! - [`markdown`]: its text as HTML; [`figures`]: the threads and drills it names.
//! - [`decision`]: what is decided in the queue; [`ready`]: the reasons at one tap; [`small_fix`]: what may be mended there;
//!   [`alike`]: whether two notes say much the same.
//! - [`elsewhere`]: whether a verdict was found on what its note is about.
//! - [`found`]: what members find of a note, in words; [`remarks`]: where a remark on one stands.
//! - [`open`]: how much there is for a member to see to; [`news`]: what can be new to them; [`reports`]: how many notes one member may report in a day.
//! - [`dangers`]: what can hurt in the materials that a note belongs to, or in copper and bronze that nobody knows ([`unmarked`])
//!   and what a field may mean ([`perhaps`]); [`told`]: how each is told;
//!   [`hazards`]: in its own words.
//! - [`used`]: which drills members used on a job, and how often it worked.
//! - [`difference`]: what changed from one wording to the next.
//! - [`asked`]: what a search asks: words, their forms, the things they name.
//! - [`tips`]: notes from a table of what was printed before; [`newsletter`]: notes on paper again.
//! - [`words`]: the words of a text, as a search takes them; [`misspelt`]: what those are read as that stand in no note;
//!   [`around`]: the part of a text that shows them.
//!
//! Leaves out SQL, pages and the clock.

pub mod again;
pub mod alike;
pub mod around;
pub mod asked;
pub mod bars;
pub mod belongs;
pub mod dangers;
pub mod decision;
pub mod difference;
pub mod elsewhere;
pub mod fields;
pub mod figures;
pub mod fittings;
pub mod folded;
pub mod found;
pub mod gauge;
pub mod hazards;
pub mod inspection;
pub mod markdown;
pub mod meant;
pub mod misspelt;
pub mod news;
pub mod newsletter;
pub mod open;
pub mod perhaps;
pub mod pressure;
pub mod ready;
pub mod refused;
pub mod remarks;
pub mod reports;
pub mod seen;
pub mod small_fix;
pub mod state;
pub mod strongest;
pub mod tips;
pub mod told;
pub mod unmarked;
pub mod used;
pub mod within;
pub mod wording;
pub mod words;

/// A note's number: its address is `/notes/12`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct NoteId(pub i64);

/// The number of one wording of a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct VersionId(pub i64);
