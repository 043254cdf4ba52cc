//! Roofs of any size: planes with many panels, and many planes with lines between them.

use seamwright::error::Error;
use seamwright::layout::{EdgeUse, LayDirection, Layout, ListChoices, ListedPlane, MarkFrom, MarkedSeams, PanelList, SeamMarks, Start};
use seamwright::panel::{Panel, PanelEnd, Seam};
use seamwright::record::Calculation;
use seamwright::roof::{Outline, PlaneInput, Point, RoofInput, Shape, Vertex};
use seamwright::units::{Length, Rounding, ShopRounding};

/// Panels on each plane of [`planes`].
pub const EACH: u32 = 1000;

/// Planes of [`EACH`] panels, as many as hold `panels`: trapezoids between a folded eave and two hips, no two alike.
///
/// # Errors
/// None for numbers up to a million.
pub fn planes(panels: u32) -> Result<Vec<Layout>, Error> {
    let (coverage, eave) = (Length::inches(16), PanelEnd::overhang(Length::inches(1)).with_fold(Length::inches(1)));
    let ridge = PanelEnd::hold_back(Length::inches(3)).with_turn_up(Length::inches(1));
    let hip = PanelEnd::hold_back(Length::inches_64(96)).with_turn_up(Length::inches(1)).with_field_trim(Length::inches(2));
    let panel = Panel::new(coverage, Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
    (0..panels / EACH)
        .map(|k| {
            let at = |x: i32, y: i32| Ok(Point::new((coverage * x).length()?, Length::micrometres(y * 1000)));
            let (width, rise) = (i32::try_from(EACH).unwrap_or(i32::MAX), 9_000 + i32::try_from(k).unwrap_or(0));
            let corners = vec![at(0, 0)?, at(width, 0)?, at(width - 150, rise)?, at(150, rise)?];
            Layout::new(Outline::new(corners, vec![])?, panel, Start::Left, |edge| {
                EdgeUse::End(match edge.index {
                    0 => eave.clone(),
                    2 => ridge.clone(),
                    _ => hip.clone(),
                })
            })
        })
        .collect()
}

/// Lists and marks every plane: panels with the allowances of their ends, groups, marks, and the marks of the seams. The number of pieces and of seams.
///
/// # Errors
/// None for [`planes`].
pub fn list(planes: &[Layout]) -> Result<(usize, usize), Error> {
    planes.iter().try_fold((0, 0), |(pieces, seams), layout| {
        let (listed, marked) = listed(layout)?;
        Ok((pieces + listed.pieces.len(), seams + marked.seams.len()))
    })
}

/// The same with the lists and marks of all planes kept, as a program would that numbers the whole roof.
///
/// # Errors
/// None for [`planes`].
pub fn list_kept(planes: &[Layout]) -> Result<Vec<(ListedPlane, MarkedSeams)>, Error> {
    planes.iter().map(listed).collect()
}

fn listed(layout: &Layout) -> Result<(ListedPlane, MarkedSeams), Error> {
    let tape = ShopRounding::new(Length::inches_64(4), Rounding::HalfAway)?;
    let listed = PanelList { layout: layout.clone(), choices: ListChoices::laid(LayDirection::LeftToRight) }.compute()?;
    let marked = SeamMarks { layout: layout.clone(), from: MarkFrom::Left, tape, creep: None }.compute()?;
    Ok((listed, marked))
}

/// How the houses of a roof stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stand {
    /// In a square.
    Square,
    /// In a row away, one wall over the other: everything lies over one stretch of x. A twenty-fifth as large, so that one roof reaches over the row.
    Row,
}

/// A roof of so many faces, a multiple of four: hip roofs, each with a ridge, four hips and four eaves.
#[must_use]
pub fn hips(faces: u32, stand: Stand) -> RoofInput {
    let houses = faces / 4;
    let across = match stand {
        Stand::Square => houses.isqrt().max(1),
        Stand::Row => 1,
    };
    let mut planes = Vec::new();
    for k in 0..houses {
        let unit = Length::micrometres(if stand == Stand::Row { 40_000 } else { 1_000_000 });
        let metres = |n: u32| unit * i32::try_from(n).unwrap_or(i32::MAX);
        let (x, y) = (15 * (k % across), 11 * (k / across));
        let v = |dx: u32, dy: u32, z: u32| Vertex { x: of(metres(x + dx)), y: of(metres(y + dy)), z: of(metres(z)) };
        let (ridge_a, ridge_b) = (v(5, 5, 3), v(9, 5, 3));
        let sides = [
            ("south", vec![v(0, 0, 0), v(14, 0, 0), ridge_b, ridge_a]),
            ("east", vec![v(14, 0, 0), v(14, 10, 0), ridge_b]),
            ("north", vec![v(14, 10, 0), v(0, 10, 0), ridge_a, ridge_b]),
            ("west", vec![v(0, 10, 0), v(0, 0, 0), ridge_a]),
        ];
        planes.extend(sides.map(|(side, outer)| PlaneInput { name: format!("{side} {k}"), shape: Shape::Space { outer, holes: vec![], flatness: None } }));
    }
    RoofInput::new(planes)
}

/// A roof of so many faces, at most fifty thousand: one slope the whole length, and on its top edge, side by side with gaps, steeper faces, each of which meets
/// a piece of it. With `corners`, the long slope has a vertex at every end of a piece.
#[must_use]
pub fn comb(faces: u32, corners: bool) -> RoofInput {
    let teeth = faces.saturating_sub(1).max(1);
    let v = |x: u32, y: u32, z: u32| {
        let at = |millimetres: u32| of(Length::micrometres(1000) * i32::try_from(millimetres).unwrap_or(i32::MAX));
        Vertex { x: at(x), y: at(y), z: at(z) }
    };
    let end = 90 * teeth;
    let mut outer = vec![v(0, 0, 0), v(end, 0, 0), v(end, 10_000, 3000)];
    if corners {
        outer.extend((0..teeth).rev().flat_map(|k| [v(90 * k + 80, 10_000, 3000), v(90 * k, 10_000, 3000)]));
    } else {
        outer.push(v(0, 10_000, 3000));
    }
    let plane = |name: String, outer| PlaneInput { name, shape: Shape::Space { outer, holes: vec![], flatness: None } };
    let mut planes = vec![plane("long".to_owned(), outer)];
    planes.extend((0..teeth).map(|k| {
        let (left, right) = (90 * k, 90 * k + 80);
        plane(format!("tooth {k}"), vec![v(left, 10_000, 3000), v(right, 10_000, 3000), v(right, 12_000, 6000), v(left, 12_000, 6000)])
    }));
    RoofInput::new(planes)
}

/// A length that is far within the range.
fn of(sum: seamwright::units::Sum) -> Length {
    sum.length().unwrap_or_default()
}
