//! The one place that writes: all files of a run, whole or not at all.
//!
//! Every file is first written beside its place under a passing name and forced to the
//! disk; then what stood there before is kept under another passing name; then all are
//! moved; then the kept ones go. A fault at any step puts everything back. If putting back
//! fails too, as when the disk is pulled out, each file is still whole: the old or the new.

use std::fmt;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Component, Path, PathBuf};

use note::{Note, msg};
use tempfile::{Builder, NamedTempFile, TempPath};

/// One file to write.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Output {
    /// Below the project folder, parts joined by `/`.
    pub path: String,
    /// The whole content.
    pub bytes: Vec<u8>,
}

impl Output {
    /// A file of text or bytes.
    pub fn new(path: impl Into<String>, bytes: impl Into<Vec<u8>>) -> Output {
        Output {
            path: path.into(),
            bytes: bytes.into(),
        }
    }
}

/// What is about to be done to a file; the last chance to stop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Make the folder it lies in.
    Folder,
    /// Make the file under a passing name.
    Create,
    /// Write the next piece.
    Write,
    /// Force it to the disk.
    Sync,
    /// Keep what stood in its place.
    Keep,
    /// Move it to its place.
    Move,
    /// Put back what was kept.
    PutBack,
}

/// A write that did not happen.
#[derive(Debug)]
pub struct WriteFault {
    /// The file, as [`Output::path`] names it.
    pub path: String,
    /// What was being done.
    pub step: Step,
    /// Why it failed.
    pub cause: io::Error,
    /// Whether everything is as it was before.
    pub undone: bool,
}

impl WriteFault {
    /// For the person at the keyboard.
    pub fn note(&self) -> Note {
        if self.cause.kind() == io::ErrorKind::AlreadyExists {
            return Note::error(None, msg!("write-exists", file = &self.path))
                .mend(msg!("write-elsewhere"));
        }
        let what = msg!(
            "write-failed",
            file = &self.path,
            cause = self.cause.to_string()
        );
        let note = Note::error(None, what);
        if self.undone {
            note.mend(msg!("write-nothing-changed"))
        } else {
            note.mend(msg!("write-mixed"))
        }
    }
}

impl fmt::Display for WriteFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {:?}: {}", self.path, self.step, self.cause)
    }
}

impl std::error::Error for WriteFault {}

/// Writes all files below `dir`, or none.
///
/// # Errors
/// [`WriteFault`], with whether all is as it was.
pub fn write(dir: &Path, outputs: &[Output]) -> Result<(), WriteFault> {
    write_watched(dir, outputs, &mut |_, _| Ok(()))
}

/// [`write()`], asking before each step: an error of `ask` stops the run like one of the disk.
///
/// # Errors
/// [`WriteFault`], with whether all is as it was.
pub fn write_watched(
    dir: &Path,
    outputs: &[Output],
    ask: &mut dyn FnMut(&str, Step) -> io::Result<()>,
) -> Result<(), WriteFault> {
    all(dir, outputs, Over::Replace, ask)
}

/// [`write()`], and never over a file that stands there: then nothing is written.
///
/// # Errors
/// [`WriteFault`], with whether all is as it was; of the first file that stands there, its
/// cause is [`io::ErrorKind::AlreadyExists`].
pub fn write_new(dir: &Path, outputs: &[Output]) -> Result<(), WriteFault> {
    all(dir, outputs, Over::Refuse, &mut |_, _| Ok(()))
}

/// What becomes of a file that stands in the place of another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Over {
    Replace,
    Refuse,
}

fn all(
    dir: &Path,
    outputs: &[Output],
    over: Over,
    ask: &mut dyn FnMut(&str, Step) -> io::Result<()>,
) -> Result<(), WriteFault> {
    let mut made = Folders { made: Vec::new() };
    let mut staged = Vec::with_capacity(outputs.len());
    for output in outputs {
        match stage(dir, output, over, &mut made, ask) {
            Ok(one) => staged.push(one),
            Err((step, cause)) => {
                drop(staged);
                made.remove();
                return Err(WriteFault {
                    path: output.path.clone(),
                    step,
                    cause,
                    undone: true,
                });
            }
        }
    }
    let mut moved: Vec<Moved> = Vec::with_capacity(staged.len());
    let mut waiting = staged.into_iter();
    while let Some(one) = waiting.next() {
        let path = one.path;
        match exchange(one, over, ask) {
            Ok(one) => moved.push(one),
            Err((step, cause)) => {
                let undone = put_back(moved, ask);
                drop(waiting);
                made.remove();
                return Err(WriteFault {
                    path: path.to_owned(),
                    step,
                    cause,
                    undone,
                });
            }
        }
    }
    // The names are safe only once the folders are; not every system can do this.
    for one in &moved {
        if let Some(folder) = one.to.parent() {
            _ = File::open(folder).and_then(|folder| folder.sync_all());
        }
    }
    Ok(())
}

/// Bytes between two questions.
const PIECE: usize = 1 << 16;

type Failed = (Step, io::Error);

struct Staged<'a> {
    path: &'a str,
    to: PathBuf,
    file: NamedTempFile,
}

struct Moved<'a> {
    path: &'a str,
    to: PathBuf,
    /// What stood there; goes when dropped.
    kept: Option<TempPath>,
}

/// Folders that this run made, outermost first.
struct Folders {
    made: Vec<PathBuf>,
}

impl Folders {
    fn make(&mut self, folder: &Path) -> io::Result<()> {
        let mut missing = Vec::new();
        let mut at = folder;
        while !at.as_os_str().is_empty() && !at.exists() {
            missing.push(at.to_owned());
            let Some(above) = at.parent() else { break };
            at = above;
        }
        for folder in missing.into_iter().rev() {
            fs::create_dir(&folder)?;
            self.made.push(folder);
        }
        Ok(())
    }

    /// Only empty ones go; what another program put there stays.
    fn remove(self) {
        for folder in self.made.iter().rev() {
            _ = fs::remove_dir(folder);
        }
    }
}

fn stage<'a>(
    dir: &Path,
    output: &'a Output,
    over: Over,
    made: &mut Folders,
    ask: &mut dyn FnMut(&str, Step) -> io::Result<()>,
) -> Result<Staged<'a>, Failed> {
    let path = output.path.as_str();
    let mut ask = |step: Step| ask(path, step).map_err(|cause| (step, cause));
    ask(Step::Folder)?;
    let inside = Path::new(path)
        .components()
        .all(|part| matches!(part, Component::Normal(_)));
    if path.is_empty() || !inside {
        let cause = io::Error::new(io::ErrorKind::InvalidInput, "not below the project folder");
        return Err((Step::Folder, cause));
    }
    let to = dir.join(path);
    if over == Over::Refuse && to.symlink_metadata().is_ok() {
        return Err((Step::Keep, io::ErrorKind::AlreadyExists.into()));
    }
    let folder = to.parent().unwrap_or(dir);
    made.make(folder).map_err(|cause| (Step::Folder, cause))?;
    ask(Step::Create)?;
    let mut file = passing(folder).map_err(|cause| (Step::Create, cause))?;
    for piece in output.bytes.chunks(PIECE) {
        ask(Step::Write)?;
        file.write_all(piece)
            .map_err(|cause| (Step::Write, cause))?;
    }
    ask(Step::Sync)?;
    file.as_file()
        .sync_all()
        .map_err(|cause| (Step::Sync, cause))?;
    Ok(Staged { path, to, file })
}

/// A file of a passing name, readable by whom the user's other files are.
fn passing(folder: &Path) -> io::Result<NamedTempFile> {
    let mut builder = Builder::new();
    builder.prefix(".chalkyard-").suffix(".part");
    #[cfg(unix)]
    let builder = {
        use std::os::unix::fs::PermissionsExt;
        builder.permissions(fs::Permissions::from_mode(0o666))
    };
    builder.tempfile_in(folder)
}

fn exchange<'a>(
    one: Staged<'a>,
    over: Over,
    ask: &mut dyn FnMut(&str, Step) -> io::Result<()>,
) -> Result<Moved<'a>, Failed> {
    let Staged { path, to, file } = one;
    ask(path, Step::Keep).map_err(|cause| (Step::Keep, cause))?;
    let kept = match over {
        Over::Replace => keep(&to).map_err(|cause| (Step::Keep, cause))?,
        Over::Refuse => None,
    };
    ask(path, Step::Move).map_err(|cause| (Step::Move, cause))?;
    match over {
        Over::Replace => file.persist(&to),
        // Somebody may have been quicker.
        Over::Refuse => file.persist_noclobber(&to),
    }
    .map_err(|fault| (Step::Move, fault.error))?;
    Ok(Moved { path, to, kept })
}

/// A second name for what stands at a place; a copy where the disk knows no second names.
fn keep(to: &Path) -> io::Result<Option<TempPath>> {
    if !to.exists() {
        return Ok(None);
    }
    let folder = to.parent().unwrap_or(Path::new("."));
    let name = Builder::new()
        .prefix(".chalkyard-")
        .suffix(".kept")
        .tempfile_in(folder)?
        .into_temp_path();
    fs::remove_file(&name)?;
    if fs::hard_link(to, &name).is_err() {
        fs::copy(to, &name)?;
    }
    Ok(Some(name))
}

/// Puts all back that was moved; whether that went well.
fn put_back(moved: Vec<Moved>, ask: &mut dyn FnMut(&str, Step) -> io::Result<()>) -> bool {
    let mut well = true;
    for one in moved.into_iter().rev() {
        let back = ask(one.path, Step::PutBack).and_then(|()| match one.kept {
            Some(kept) => kept.persist(&one.to).map_err(|fault| fault.error),
            None => fs::remove_file(&one.to),
        });
        well &= back.is_ok();
    }
    well
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    fn files(dir: &Path) -> BTreeMap<String, Vec<u8>> {
        fn walk(dir: &Path, under: &str, into: &mut BTreeMap<String, Vec<u8>>) {
            for entry in fs::read_dir(dir).expect("a folder") {
                let entry = entry.expect("an entry");
                let name = format!("{under}{}", entry.file_name().to_string_lossy());
                if entry.path().is_dir() {
                    walk(&entry.path(), &format!("{name}/"), into);
                } else {
                    into.insert(name, fs::read(entry.path()).expect("a file"));
                }
            }
        }
        let mut into = BTreeMap::new();
        walk(dir, "", &mut into);
        into
    }

    /// A folder with an old plan, and what a run wants to write: one file replaced, one
    /// in place of nothing, one in a new folder, one of several pieces.
    fn before() -> (tempfile::TempDir, Vec<Output>) {
        let dir = tempfile::tempdir().expect("a folder");
        fs::create_dir(dir.path().join("out")).expect("a folder");
        fs::write(dir.path().join("out/plan.json"), "old plan").expect("a file");
        fs::write(dir.path().join("layout.toml"), "old layout").expect("a file");
        let outputs = vec![
            Output::new("layout.toml", "new layout"),
            Output::new("out/plan.json", vec![b'n'; 2 * PIECE + 5]),
            Output::new("out/yard.svg", "new"),
            Output::new("out/build/stencils/sheet-1.svg", "new"),
        ];
        (dir, outputs)
    }

    fn steps() -> usize {
        let (dir, outputs) = before();
        let mut steps = 0;
        let counted = write_watched(dir.path(), &outputs, &mut |_, _| {
            steps += 1;
            Ok(())
        });
        counted.expect("a sound disk");
        let after = files(dir.path());
        assert_eq!(after.len(), outputs.len());
        for output in &outputs {
            assert_eq!(
                after.get(&output.path),
                Some(&output.bytes),
                "{}",
                output.path
            );
        }
        steps
    }

    #[test]
    fn what_stands_there_is_never_written_over() {
        let (dir, outputs) = before();
        let old = files(dir.path());
        let fault = write_new(dir.path(), &outputs).expect_err("two files stand there");
        assert_eq!((fault.path.as_str(), fault.undone), ("layout.toml", true));
        assert_eq!(fault.note().what.key, "write-exists");
        assert_eq!(files(dir.path()), old);
        assert!(!dir.path().join("out/build").exists());
        let fresh = dir.path().join("new/yard");
        write_new(&fresh, &outputs).expect("nothing stands there");
        assert_eq!(files(&fresh).len(), outputs.len());
    }

    #[test]
    fn a_fault_at_any_step_leaves_everything_as_it_was() {
        let steps = steps();
        assert!(steps > 20, "only {steps} steps");
        for broken in 0..steps {
            let (dir, outputs) = before();
            let old = files(dir.path());
            let mut step = 0;
            let fault = write_watched(dir.path(), &outputs, &mut |_, _| {
                step += 1;
                if step == broken + 1 {
                    Err(io::Error::other("pulled out"))
                } else {
                    Ok(())
                }
            });
            let fault = fault.expect_err("a broken step");
            assert!(fault.undone, "step {broken}: {fault}");
            assert_eq!(files(dir.path()), old, "step {broken}: {fault}");
            assert!(
                !dir.path().join("out/build").exists(),
                "step {broken}: {fault}"
            );
        }
    }

    #[test]
    fn where_the_disk_never_comes_back_each_file_is_the_old_or_the_new() {
        for broken in 0..steps() {
            let (dir, outputs) = before();
            let old = files(dir.path());
            let mut step = 0;
            let fault = write_watched(dir.path(), &outputs, &mut |_, _| {
                step += 1;
                if step > broken {
                    Err(io::Error::other("pulled out"))
                } else {
                    Ok(())
                }
            });
            let fault = fault.expect_err("a broken disk");
            let after = files(dir.path());
            for name in old.keys() {
                let new = outputs
                    .iter()
                    .find(|output| output.path == *name)
                    .map(|output| &output.bytes);
                let found = after.get(name);
                assert!(
                    found == old.get(name) || found == new,
                    "step {broken}: {name}: {fault}"
                );
            }
            if fault.undone {
                assert_eq!(after, old, "step {broken}");
            }
        }
    }

    #[test]
    fn nothing_is_written_outside_the_folder() {
        let (dir, _) = before();
        let old = files(dir.path());
        let absolute = dir.path().join("evil").to_string_lossy().into_owned();
        for path in ["../evil", "out/../../evil", "", ".", &absolute] {
            let outputs = [Output::new("good.txt", "good"), Output::new(path, "evil")];
            let fault = write(dir.path(), &outputs).expect_err(path);
            assert_eq!(fault.step, Step::Folder);
            assert_eq!(files(dir.path()), old, "{path}");
        }
    }

    /// The real thing, not an injected fault: a folder stands where a file should go.
    #[test]
    fn a_real_fault_is_undone_and_told() {
        let (dir, outputs) = before();
        fs::create_dir_all(dir.path().join("out/yard.svg/in the way")).expect("a folder");
        let old = files(dir.path());
        let fault = write(dir.path(), &outputs).expect_err("a folder in the way");
        assert_eq!(fault.path, "out/yard.svg");
        assert!(fault.undone);
        assert_eq!(files(dir.path()), old);
        assert_eq!(fault.note().what.key, "write-failed");
    }

    #[cfg(unix)]
    #[test]
    fn written_files_can_be_read_by_others_as_the_user_wishes() {
        use std::os::unix::fs::PermissionsExt;
        let (dir, outputs) = before();
        write(dir.path(), &outputs).expect("a sound disk");
        let plain = dir.path().join("plain");
        fs::write(&plain, "").expect("a file");
        let mode = |path: &Path| fs::metadata(path).expect("a file").permissions().mode();
        assert_eq!(mode(&dir.path().join("out/yard.svg")), mode(&plain));
    }
}
