//! All files of a build.

use ledger::Ledger;
use stencil::Stencils;

use crate::drawing::{Drawing, Sheet, Texts, sheet_drawing, stencil_drawing};
use crate::dxf::{Version, dxf};
use crate::figures::SQUARE;
use crate::svg::svg;

/// A file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutFile {
    /// Its name within the folder of cut files: ASCII, and names sort as they are used.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// One file a sheet, `sheet-01`, and one a stencil, `stencil-S03-ring-chalk`, each as DXF and
/// as SVG. R12 files say so, and their unit, in their name.
pub fn files(
    stencils: &Stencils,
    sheets: &[Sheet],
    texts: &Texts,
    version: Version,
    ledger: &Ledger,
) -> Vec<CutFile> {
    let square = ledger.number(SQUARE);
    let digits = sheets.len().to_string().len().max(2);
    let sheets = sheets.iter().enumerate().map(|(number, sheet)| {
        let title = format!("sheet-{:0digits$}", number + 1);
        sheet_drawing(&title, sheet, stencils, texts, square)
    });
    let alone = stencils.stencils.iter().enumerate().map(|(number, one)| {
        let colours = one.colours.iter().map(|colour| colour.word());
        let colours = colours.collect::<Vec<_>>().join("-");
        let title = format!("stencil-{}-{}-{colours}", one.id, one.motif.slug());
        let name = texts.names.get(number).map_or("", String::as_str);
        stencil_drawing(&title, one, name, texts, square)
    });
    sheets
        .chain(alone)
        .flat_map(|drawing: Drawing| {
            let end = match version {
                Version::R2000 => ".dxf",
                Version::R12 => "-r12-mm.dxf",
            };
            [
                CutFile {
                    name: format!("{}{end}", drawing.title),
                    bytes: dxf(&drawing, version),
                },
                CutFile {
                    name: format!("{}.svg", drawing.title),
                    bytes: svg(&drawing),
                },
            ]
        })
        .collect()
}
