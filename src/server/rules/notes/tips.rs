//! Tips that were printed before, from a table: read all of them or none, each row as a form would be.

use csv::{ReaderBuilder, StringRecord};
use sha2::{Digest, Sha256};

use super::fields::{DONE, Done, NoteField, SOURCE, TEXT, TITLE};
use super::wording::{Aim, Typed, Wording};
use holewright_pages::FieldError;

/// The field that holds the table.
pub const FIELD: &str = "tips";
/// The most tips taken at once.
pub const MOST: usize = 60;
/// The most characters of a table.
pub const LONGEST: usize = 60_000;
/// The most mistakes that are told at once.
const TOLD: usize = 10;
/// What parts the columns: a comma, a spreadsheet's tab, or what stands for a comma where that is in numbers.
const PARTS: [char; 3] = [',', '\t', ';'];

/// One tip.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tip {
    /// As a form of it would be kept.
    pub wording: Wording,
    /// The same row of the same member's has the same: sent twice it makes one note.
    pub form_key: String,
}

/// The columns that a table may have, in any order.
pub fn columns() -> impl Iterator<Item = NoteField> {
    [TITLE, TEXT].into_iter().chain(DONE)
}

/// The tips of a table whose first row names its columns. `of` is whoever puts them in.
///
/// # Errors
/// The table cannot be read, has no tip or too many, or one of them is not fit to be sent in: each mistake
/// with its row, the first of them under [`FIELD`].
pub fn read(table: &str, of: i64) -> Result<Vec<Tip>, Vec<FieldError>> {
    let table = table.trim_matches(['\u{feff}', '\n', '\r']);
    let said = |words: String| vec![FieldError::new(FIELD, words)];
    let length = table.chars().count();
    if length > LONGEST {
        return Err(said(format!("That is {length} characters; {LONGEST} are taken at once.")));
    }
    let head = table.lines().next().unwrap_or_default();
    let part = PARTS.into_iter().max_by_key(|part| head.matches(*part).count()).unwrap_or(',');
    let mut reader = ReaderBuilder::new()
        .delimiter(u8::try_from(part).unwrap_or(b','))
        .flexible(true)
        .from_reader(table.as_bytes());
    let unread = |error: csv::Error| said(format!("The table cannot be read: {error}."));
    let head: Vec<String> = reader.headers().map_err(unread)?.iter().map(plain).collect();
    if let Some(unknown) = head.iter().find(|name| !columns().any(|field| field.name == **name)) {
        let names: Vec<&str> = columns().map(|field| field.name).collect();
        return Err(said(format!(
            "The first row names the columns, and “{}” is none: they are {}.",
            unknown.chars().take(40).collect::<String>(),
            names.join(", ")
        )));
    }
    for wanted in [TITLE, TEXT, SOURCE] {
        if !head.iter().any(|name| name == wanted.name) {
            return Err(said(format!("A column “{}” is missing.", wanted.name)));
        }
    }
    let twice = |name: &&String| head.iter().filter(|held| held == name).count() > 1;
    if let Some(name) = head.iter().find(twice) {
        return Err(said(format!("Two columns are called “{name}”.")));
    }
    // The first row names the columns, and people count from one.
    let rows = reader.records().enumerate().map(|(number, row)| row.map(|row| (number + 2, row)));
    let rows: Vec<_> = rows.collect::<Result<_, _>>().map_err(unread)?;
    let filled = |(_, row): &&(usize, StringRecord)| row.iter().any(|cell| !cell.trim().is_empty());
    let rows: Vec<_> = rows.iter().filter(filled).collect();
    if rows.len() > MOST {
        return Err(said(format!("That is {} tips; {MOST} are taken at once.", rows.len())));
    }
    let (mut tips, mut errors) = (Vec::new(), Vec::new());
    for (number, row) in rows {
        let wrong = |words: String| FieldError::new(FIELD, format!("Row {number}: {words}"));
        if row.len() != head.len() {
            errors.push(wrong(format!(
                "it has {} cells, and {} columns are named. A text with a “{part}” in it stands in \"quotes\".",
                row.len(),
                head.len()
            )));
            continue;
        }
        let cell = |field: NoteField| {
            let place = head.iter().position(|name| name == field.name);
            place.and_then(|place| row.get(place)).unwrap_or_default().to_owned()
        };
        match tip(cell, of) {
            Ok(tip) => tips.push(tip),
            Err(found) => errors.extend(found.into_iter().map(|error| wrong(error.message))),
        }
    }
    if tips.is_empty() && errors.is_empty() {
        errors = said("There is no tip below the names of the columns.".to_owned());
    }
    if errors.len() > TOLD {
        let more = errors.len() - TOLD;
        errors.truncate(TOLD);
        errors.push(FieldError::new(FIELD, format!("And {more} more.")));
    }
    if errors.is_empty() { Ok(tips) } else { Err(errors) }
}

fn tip(cell: impl Fn(NoteField) -> String, of: i64) -> Result<Tip, Vec<FieldError>> {
    let typed = Typed {
        title: cell(TITLE),
        text: cell(TEXT),
        done: Done::from_each(&cell),
        ..Typed::default()
    };
    let mut errors = Vec::new();
    if typed.done.text(SOURCE.name).trim().is_empty() {
        errors.push(FieldError::new(FIELD, "Say where it was printed, and in what year."));
    }
    match Wording::read(&typed, Aim::SendIn) {
        Ok(wording) if errors.is_empty() => {
            let row = format!("tip of {of}\n{}", wording.as_lines());
            let form_key = Sha256::digest(row).iter().map(|byte| format!("{byte:02x}")).collect();
            Ok(Tip { wording, form_key })
        }
        Ok(_) => Err(errors),
        Err(wrong) => Err(wrong.into_iter().chain(errors).collect()),
    }
}

/// The name of a column without what a spreadsheet puts around it.
fn plain(name: &str) -> String {
    name.trim().to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::{LONGEST, MOST, read};

    fn wrong(table: &str) -> String {
        let errors = read(table, 1).unwrap_err();
        assert!(errors.iter().all(|error| error.field == super::FIELD));
        errors.into_iter().map(|error| error.message).collect::<Vec<_>>().join(" | ")
    }

    #[test]
    fn a_table_is_read_whatever_parts_its_columns() {
        let tables = [
            "source,title,text,material\n\"Newsletter 12, 1987\",Reaming,\"Slow,\nwith \"\"oil\"\".\",gunmetal\n",
            "\u{feff}Source\tTitle\tText\tMaterial\r\n\"Newsletter 12, 1987\"\tReaming\t\"Slow,\nwith \"\"oil\"\".\"\tgunmetal\r\n\r\n",
            "source;title;text;material\nNewsletter 12, 1987;Reaming;\"Slow,\nwith \"\"oil\"\".\";gunmetal\n;;;\n",
        ];
        for table in tables {
            let tips = read(table, 1).unwrap();
            assert_eq!(tips.len(), 1, "{table}");
            let wording = &tips[0].wording;
            assert_eq!(
                (wording.title.as_str(), wording.text.as_str()),
                ("Reaming", "Slow,\nwith \"oil\".")
            );
            assert_eq!(wording.done.text("source"), "Newsletter 12, 1987");
            assert_eq!(wording.things[0].id, "materials/gunmetal");
            assert_eq!(read(table, 1).unwrap()[0].form_key, tips[0].form_key, "the same row");
            assert_ne!(read(table, 2).unwrap()[0].form_key, tips[0].form_key, "another’s");
        }
    }

    #[test]
    fn what_is_wrong_is_told_with_its_row_and_nothing_is_read() {
        assert!(wrong("").contains("A column “title” is missing"), "{}", wrong(""));
        assert!(
            wrong("title,colour,source,text")
                .contains("“colour” is none: they are title, text, material")
        );
        assert_eq!(wrong("title,text\nA,b"), "A column “source” is missing.");
        assert_eq!(wrong("title,text,source\n"), "There is no tip below the names of the columns.");
        let table = "title,text,source\nA,b,Newsletter 1987\n,b,Newsletter 1987\nA,b, \n";
        assert_eq!(
            wrong(table),
            "Row 3: Give the note a title: what material, what was done. | \
             Row 4: Say where it was printed, and in what year."
        );
        let many = format!("title,text,source\n{}", "A,b,c\n".repeat(MOST + 1));
        assert!(wrong(&many).contains("That is 61 tips; 60 are taken"), "{}", wrong(&many));
        assert_eq!(wrong("title,text,text,source\nA,b,c,d"), "Two columns are called “text”.");
        assert_eq!(
            wrong("title,text,source\nA,Slow, steady,Newsletter 12\n"),
            "Row 2: it has 4 cells, and 3 columns are named. A text with a “,” in it stands in \"quotes\"."
        );
        let bad = format!("title,text,source\n{}", ",b,c\n".repeat(30));
        assert!(wrong(&bad).ends_with("And 20 more."), "{}", wrong(&bad));
        assert!(wrong(&"x".repeat(LONGEST + 1)).contains("60000 are taken"));
    }

    #[test]
    fn a_tip_on_pressure_is_heard_as_one() {
        let table = "title,text,source\nLaps,Seat of the safety valve,Newsletter 1987\n";
        use crate::rules::notes::state::Subject;
        assert_eq!(read(table, 1).unwrap()[0].wording.subject, Subject::Pressure);
    }
}
