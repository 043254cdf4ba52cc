use super::*;

fn long(strip: usize, value: &str) -> Error {
    Error::new(ErrorKind::Impossible, "a panel is too long").at(format!("strips[{strip}]")).value_of(value).accepts("at most 12 m").cured_by("allow end laps")
}

fn text(faults: impl IntoIterator<Item = Error>) -> (Error, String) {
    let mut all = Faults::default();
    faults.into_iter().for_each(|e| all.add(e));
    let e = all.check().unwrap_err();
    let text = e.to_string();
    (e, text)
}

#[test]
fn what_many_places_share_is_told_once() {
    let other = Error::new(ErrorKind::Missing, "no name").at("name");
    let (e, told) = text([long(0, "13 m"), other, long(1, "13 m"), long(2, "14 m")]);
    assert_eq!(e.others().len(), 3);
    let wanted = "strips[0]: a panel is too long, got \"13 m\"; accepted: at most 12 m; cure: allow end laps\n\
                  the same at 2 more: strips[1], strips[2] (\"14 m\")\n\
                  name: no name";
    assert_eq!(told, wanted);
}

#[test]
fn a_text_stays_short_however_many_faults_there_are() {
    let (e, told) = text((0..100_000).map(|k| long(k, "13 m")));
    assert_eq!((e.others().len(), told.lines().count()), (99_999, 2));
    assert!(
        told.ends_with("\nthe same at 99999 more, the first of them strips[1], strips[2], strips[3], strips[4], strips[5], strips[6], strips[7], strips[8]")
    );
    let (e, told) = text((0..1000).map(|k| Error::new(ErrorKind::Missing, format!("no name of {k}"))));
    assert_eq!((e.others().len(), told.lines().count()), (999, TOLD + 1));
    assert!(told.ends_with("\nno name of 39\nand 960 further faults"), "{told}");
}

#[test]
fn faults_that_point_into_their_value_are_told_each() {
    let (_, told) = text([0, 1].map(|at| Error::new(ErrorKind::Parse, "a comma").value_of("1,2").pointing(at, at + 1)));
    assert_eq!(told, "a comma, got \"1,2\" at character 1\na comma, got \"1,2\" at character 2");
}
