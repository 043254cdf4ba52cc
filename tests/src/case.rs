//! Reading `tests/cases/<room>/<source>.toml`.

use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// Outputs or tolerances by name, as text.
pub type Values = BTreeMap<String, String>;

/// Where the expected figures come from.
#[derive(Debug, Clone, Deserialize)]
#[serde(untagged)]
pub enum Source {
    /// `common-practice`, or `bad-input` for a refusal that needs no authority.
    Plain(String),
    /// A published place.
    Published(Published),
}

/// A place in a document.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Published {
    /// Name or number.
    pub document: String,
    /// Edition or year.
    #[serde(default)]
    pub edition: String,
    /// Clause, table, page.
    pub place: String,
    /// `text`, `secondary`, `memory` or `derived`.
    pub seen: String,
}

/// One case.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Case {
    /// Unique over all files.
    pub name: String,
    /// A function that the harnesses call, dotted by room, or the name of a calculation.
    pub op: String,
    /// Inputs: text by name for a function, the calculation's own serial form for a name.
    #[serde(rename = "in")]
    pub inputs: toml::Table,
    /// Expected outputs by name; for a calculation, by path.
    pub out: Values,
    /// Absolute tolerances, by output.
    #[serde(default)]
    pub tol: Values,
    /// Whose figures they are.
    pub source: Source,
    /// The row of the collected reference tables that this is, if it is one.
    #[serde(default)]
    pub row: Option<String>,
    /// Why the print is wrong: such a case must not match.
    #[serde(default)]
    pub deviates: Option<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    case: Vec<Case>,
}

/// Every case of every file, in the order of the files' paths.
///
/// # Errors
/// The file and what is wrong with it.
pub fn load_all(folder: &Path) -> Result<Vec<Case>, String> {
    let mut paths = Vec::new();
    collect(folder, &mut paths)?;
    paths.sort();
    let mut cases = Vec::new();
    for path in paths {
        let text = std::fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?;
        let file: File = toml::from_str(&text).map_err(|e| format!("{}: {e}", path.display()))?;
        cases.extend(file.case);
    }
    Ok(cases)
}

fn collect(folder: &Path, out: &mut Vec<PathBuf>) -> Result<(), String> {
    let entries = std::fs::read_dir(folder).map_err(|e| format!("{}: {e}", folder.display()))?;
    for entry in entries {
        let path = entry.map_err(|e| e.to_string())?.path();
        if path.is_dir() {
            collect(&path, out)?;
        } else if path.extension().is_some_and(|e| e == "toml") && path.file_name().is_some_and(|n| n != "rows.toml") {
            out.push(path);
        }
    }
    Ok(())
}
