//! A member is found by name where there are many.

use crate::notes::club::{Club, Right};

#[tokio::test]
async fn a_member_is_found_by_a_part_of_the_name_where_there_are_many() {
    let club = Club::open().await;
    let una = club.join("Una Oakes", Right::Secretary).await;
    let names = async |path: &str| {
        let page = club.get(path, Some(&una)).await.body;
        let rows = page.split("<tr id=\"member-").skip(1);
        let name =
            |row: &str| row.split("</a>").next().unwrap().rsplit('>').next().unwrap().to_owned();
        (rows.map(name).collect::<Vec<_>>(), page)
    };
    for number in 0..18 {
        club.join(&format!("Member {}", char::from(b'A' + number)), Right::None).await;
    }
    club.join("Zoë Åmot", Right::None).await;
    let (all, page) = names("/people").await;
    assert!(all.len() == 20 && !page.contains("name=\"q\""), "at a glance: {page}");
    assert_eq!(names("/people?q=zoe").await.0.len(), 20, "nothing is asked");
    club.join("Percy Wainscott", Right::None).await;
    let (all, page) = names("/people").await;
    assert!(all.len() == 21 && page.contains("<label for=\"q\">Part of a name</label>"), "{page}");
    for (typed, found) in
        [("zoe", "Zoë Åmot"), ("+amot+", "Zoë Åmot"), ("WAINS", "Percy Wainscott")]
    {
        let (names, page) = names(&format!("/people?q={typed}")).await;
        assert_eq!(names, [found], "{typed}: {page}");
        assert!(page.contains("<a href=\"/people\">All of them</a>"), "{page}");
    }
    // Signs alone stand in no name.
    for typed in ["nobody", "%25", "_", "-+%26"] {
        let (none, page) = names(&format!("/people?q={typed}")).await;
        assert!(none.is_empty() && page.contains("No member’s name has that in it."), "{page}");
    }
}
