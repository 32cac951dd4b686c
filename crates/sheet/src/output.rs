//! Pages as files: the format follows from the file's name, and what is there is not replaced unasked.

use std::ffi::OsString;
use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use crate::page::Page;
use crate::pdf::{self, PdfError};
use crate::png::{self, PngError};
use crate::svg;

/// What a page is written as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// All pages in one document, to be printed.
    Pdf,
    /// One page a file, to be drawn on.
    Svg,
    /// One page a file as a picture.
    Png,
}

impl Format {
    /// Every format.
    pub const ALL: [Self; 3] = [Self::Pdf, Self::Svg, Self::Png];

    /// The end of a file's name, without its dot.
    #[must_use]
    pub const fn extension(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Svg => "svg",
            Self::Png => "png",
        }
    }

    /// The format that the end of a file's name tells.
    ///
    /// # Errors
    /// [`OutputError::Format`] for any other name.
    pub fn of(path: &Path) -> Result<Self, OutputError> {
        let end = path
            .extension()
            .map(|end| end.to_string_lossy().to_lowercase());
        Self::ALL
            .into_iter()
            .find(|format| end.as_deref() == Some(format.extension()))
            .ok_or_else(|| OutputError::Format {
                path: path.to_owned(),
            })
    }
}

/// What is done with a file that is there already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Existing {
    /// It stays, and nothing is written.
    Keep,
    /// It is replaced.
    Replace,
}

/// Why pages were not written.
#[derive(Debug, thiserror::Error)]
pub enum OutputError {
    /// The name tells no format.
    #[error("{}: the name must end in .pdf, .svg or .png, which decides the format", path.display())]
    Format {
        /// The file.
        path: PathBuf,
    },
    /// There is a file of that name, which was to be kept.
    #[error("{} is there already", path.display())]
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// The document could not be made.
    #[error(transparent)]
    Pdf(#[from] PdfError),
    /// The picture could not be made.
    #[error(transparent)]
    Png(#[from] PngError),
    /// The system did not write the file.
    #[error("{} cannot be written: {reason}; choose a folder you may write to, with room left", path.display())]
    Write {
        /// The file.
        path: PathBuf,
        /// What the system says.
        reason: io::Error,
    },
}

/// Writes pages to a file, or where the format holds one page only, to that file and further ones: `name-2.svg` and so
/// on. Gives the files written. `dpi` is the resolution of a picture, dots per inch.
///
/// A file is written whole or not at all: beside its place first, then renamed. What is no file, such as a pipe, is
/// written to as it is.
///
/// # Errors
/// Any [`OutputError`]; no file is written where one of them must be kept.
pub fn write(
    pages: &[Page],
    path: &Path,
    dpi: f64,
    existing: Existing,
) -> Result<Vec<PathBuf>, OutputError> {
    let documents = documents(pages, Format::of(path)?, dpi)?;
    let paths: Vec<PathBuf> = (1..=documents.len())
        .map(|number| numbered(path, number))
        .collect();
    for path in &paths {
        if existing == Existing::Keep && path.symlink_metadata().is_ok() && !is_stream(path) {
            return Err(OutputError::Exists { path: path.clone() });
        }
    }
    for (path, document) in paths.iter().zip(documents) {
        write_whole(path, &document, existing).map_err(|reason| match reason.kind() {
            io::ErrorKind::AlreadyExists => OutputError::Exists { path: path.clone() },
            _ => OutputError::Write {
                path: path.clone(),
                reason,
            },
        })?;
    }
    Ok(paths)
}

/// The documents that pages make in a format: one, or one a page.
///
/// # Errors
/// [`OutputError::Pdf`] and [`OutputError::Png`].
pub fn documents(pages: &[Page], format: Format, dpi: f64) -> Result<Vec<Vec<u8>>, OutputError> {
    Ok(match format {
        Format::Pdf => vec![pdf::document(pages)?],
        Format::Svg => pages
            .iter()
            .map(|page| svg::document(page).into_bytes())
            .collect(),
        Format::Png => pages
            .iter()
            .map(|page| png::document(page, dpi))
            .collect::<Result<_, _>>()?,
    })
}

/// The file of a page: the path itself for the first.
fn numbered(path: &Path, number: usize) -> PathBuf {
    if number == 1 {
        return path.to_owned();
    }
    let mut name = path.file_stem().map(OsString::from).unwrap_or_default();
    name.push(format!("-{number}"));
    if let Some(end) = path.extension() {
        name.push(".");
        name.push(end);
    }
    path.with_file_name(name)
}

/// Whether there is something that is no file and no folder: a pipe, a device.
fn is_stream(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|found| !found.is_file() && !found.is_dir())
}

fn write_whole(path: &Path, document: &[u8], existing: Existing) -> io::Result<()> {
    if is_stream(path) {
        return fs::OpenOptions::new()
            .write(true)
            .open(path)?
            .write_all(document);
    }
    // Behind a symbolic link, what it leads to is replaced and the link stays.
    let target = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let folder = match target.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let mut builder = tempfile::Builder::new();
    builder.prefix(".steerloft-").suffix(".tmp");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // A new file is readable as any new file is: the mask of the process takes away what it should.
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    let mut temporary = builder.tempfile_in(folder)?;
    temporary.write_all(document)?;
    let persisted = match existing {
        Existing::Keep => temporary.persist_noclobber(&target),
        Existing::Replace => temporary.persist(&target),
    };
    persisted.map(drop).map_err(|error| error.error)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn the_name_decides_the_format() {
        assert_eq!(Format::of(Path::new("a.b/x.PDF")).unwrap(), Format::Pdf);
        assert_eq!(Format::of(Path::new("x.y.svg")).unwrap(), Format::Svg);
        for wrong in ["x", "pdf", "x.pdf.gz", "x.", ""] {
            assert!(Format::of(Path::new(wrong)).is_err(), "{wrong}");
        }
    }

    #[test]
    fn further_pages_are_numbered_before_the_end_of_the_name() {
        let path = Path::new("folder/my.car.png");
        assert_eq!(numbered(path, 1), path);
        assert_eq!(numbered(path, 3), Path::new("folder/my.car-3.png"));
    }
}
