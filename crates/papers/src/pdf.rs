//! The document as PDF, set by a typesetting library with fonts of our own. The words never become markup: the template reads
//! them as data.

use crate::model::{Block, Paper};
use crate::speak::tied;
use std::fmt;
use std::sync::OnceLock;
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt as _, World};
use typst_layout::PagedDocument;
use typst_pdf::PdfOptions;

const TEMPLATE: &str = include_str!("template.typ");

/// Libertinus Serif under the SIL Open Font License, DejaVu Sans under its own; both stand in `fonts/`.
const FONTS: [&[u8]; 4] = [
    include_bytes!("../fonts/LibertinusSerif-Regular.otf"),
    include_bytes!("../fonts/LibertinusSerif-Bold.otf"),
    include_bytes!("../fonts/LibertinusSerif-Italic.otf"),
    include_bytes!("../fonts/DejaVuSans.ttf"),
];

/// The face pictures are set in; they ask for the system's.
const FACE: &str = "system-ui,-apple-system,'Segoe UI',Roboto,'Helvetica Neue',Arial,'DejaVu Sans',sans-serif";

/// Longest run of letters without a place to break.
const RUN: usize = 24;

/// Why there is no PDF.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unset(String);

impl fmt::Display for Unset {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the paper could not be set: {}", self.0)
    }
}

impl std::error::Error for Unset {}

/// The file. The same paper gives the same bytes.
///
/// # Errors
/// When the typesetting library refuses; no text of a job should bring that about.
pub fn pdf(paper: &Paper) -> Result<Vec<u8>, Unset> {
    let mut paper = paper.clone().map_text(&|text| breakable(&tied(text)));
    for block in &mut paper.blocks {
        if let Block::Pictures { pictures, .. } = block {
            for picture in pictures {
                picture.svg = picture.svg.replace(FACE, "'Libertinus Serif','DejaVu Sans'");
            }
        }
    }
    let data = serde_json::to_vec(&paper).map_err(|error| Unset(error.to_string()))?;
    let desk = Desk::new(data)?;
    let set = typst::compile::<PagedDocument>(&desk);
    let said = |errors: &[typst::diag::SourceDiagnostic]| {
        Unset(errors.iter().map(|e| e.message.to_string()).collect::<Vec<_>>().join("; "))
    };
    let document = set.output.map_err(|errors| said(&errors))?;
    let options = PdfOptions {
        ident: Smart::Custom(format!("{} {}", paper.file, paper.foot)),
        creator: Smart::Custom(Some(format!("fairwake {}", crate::VERSION))),
        timestamp: None,
        ..PdfOptions::default()
    };
    let bytes = typst_pdf::pdf(&document, &options).map_err(|errors| said(&errors));
    // What the library keeps of earlier papers is worth little to later ones.
    comemo::evict(8);
    bytes
}

/// Lets long runs of letters break.
fn breakable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut run = 0;
    for c in text.chars() {
        run = if c.is_whitespace() { 0 } else { run + 1 };
        out.push(c);
        if run >= RUN {
            out.push('\u{200b}');
            run = 0;
        }
    }
    out
}

/// What the library may read: the template, the paper, the fonts; no disk, no network, no clock.
struct Desk {
    main: Source,
    data: (FileId, Bytes),
}

struct Kept {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
}

fn kept() -> &'static Kept {
    static KEPT: OnceLock<Kept> = OnceLock::new();
    KEPT.get_or_init(|| {
        let fonts: Vec<Font> = FONTS.iter().flat_map(|font| Font::iter(Bytes::new(*font))).collect();
        Kept { library: LazyHash::new(Library::default()), book: LazyHash::new(FontBook::from_fonts(&fonts)), fonts }
    })
}

fn file(name: &str) -> Result<FileId, Unset> {
    let path = VirtualPath::new(name).map_err(|error| Unset(error.to_string()))?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

impl Desk {
    fn new(data: Vec<u8>) -> Result<Desk, Unset> {
        let main = Source::new(file("main.typ")?, TEMPLATE.to_owned());
        Ok(Desk { main, data: (file("paper.json")?, Bytes::new(data)) })
    }
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &kept().library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &kept().book
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.main.id() { Ok(self.main.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        if id == self.data.0 { Ok(self.data.1.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn font(&self, index: usize) -> Option<Font> {
        kept().fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
