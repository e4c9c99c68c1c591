//! Faults of the JSON request in the words of the CSV file: line and column beside the place.
//! Pointers stay; nothing is judged here.

use bearwell_engine::catalogue::{RefusalDef, refusals};
use bearwell_engine::contract::Issue;

use super::{Head, NOTE, Sheet, blank};
use crate::problem::Problem;
use crate::read::Pointer;

impl Sheet {
    /// The problem with each fault of the table at its line and column.
    pub fn explain(&self, problem: Problem) -> Problem {
        problem.told(|issue| self.tell(issue))
    }

    fn tell(&self, issue: Issue) -> Issue {
        let parts: Vec<String> = Pointer::parts(&issue.pointer).collect();
        let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
        let number = |text: &str| text.parse::<usize>().ok();
        match parts[..] {
            [member] if member == self.rules.table => self.table(issue),
            [member, "columns", column, ..] if member == self.rules.table => match number(column) {
                Some(column) => self.column(issue, column),
                None => issue,
            },
            [member, "rows"] if member == self.rules.table => self.length(issue),
            [member, "rows", row] if member == self.rules.table => match number(row) {
                Some(row) => self.row(issue, row),
                None => issue,
            },
            [member, "rows", row, column] if member == self.rules.table => {
                match (number(row), number(column)) {
                    (Some(row), Some(column)) => self.cell(issue, row, column),
                    _ => issue,
                }
            }
            [member]
                if Some(member) == self.rules.notes && is(&issue, &refusals::DUPLICATE_MEMBER) =>
            {
                self.notes_twice(issue, member)
            }
            [member, note, ..] if Some(member) == self.rules.notes => {
                let row = number(note).and_then(|note| self.noted.get(note));
                match row.and_then(|row| self.rows.get(*row)) {
                    Some(row) => at(row.line, Some(NOTE), issue),
                    None => issue,
                }
            }
            _ => issue,
        }
    }

    fn table(&self, issue: Issue) -> Issue {
        if is(&issue, &refusals::DUPLICATE_MEMBER) {
            return twice(issue, self.rules.table);
        }
        if is(&issue, &refusals::MISSING_MEMBER) {
            return at(self.header, None, issue);
        }
        issue
    }

    fn length(&self, mut issue: Issue) -> Issue {
        let (rows, most) = (self.rows.len(), self.most_rows);
        if rows > most && is(&issue, &refusals::LIST_TOO_LONG) {
            issue.detail = format!("{rows} given, at most {most} accepted");
        }
        issue
    }

    fn notes_twice(&self, issue: Issue, member: &str) -> Issue {
        if !self.heads.iter().any(|head| head.note && head.again) {
            return twice(issue, member);
        }
        let detail = format!("the column `{NOTE}` stands twice");
        at(self.header, Some(NOTE), Issue { detail, ..issue })
    }

    fn column(&self, mut issue: Issue, column: usize) -> Issue {
        let Some(head) = self.numbers.get(column).map(|at| &self.heads[*at]) else {
            return issue;
        };
        if is(&issue, &refusals::UNKNOWN_CHOICE) {
            if head.name.is_empty() {
                issue.detail = "the column has no name".to_owned();
            } else if self.rules.notes.is_some() && head.name == NOTE {
                issue.detail = format!("`{NOTE}` holds text and takes no unit");
            } else {
                if self.rules.notes.is_some() && !issue.detail.ends_with('?') {
                    issue.detail += &format!("; text stands in `{NOTE}`");
                }
                if head.name.contains(['(', ')', '[', ']', '{', '}']) {
                    issue.detail += "; a unit stands in square brackets behind the name";
                }
            }
        } else if is(&issue, &refusals::MISSING_MEMBER)
            && let Some(role) = head.role
        {
            let units: Vec<String> = role.units.iter().map(|u| format!("`{}`", u.name)).collect();
            issue.detail = format!(
                "the unit is missing; write `{} [{}]`, with one of {}",
                head.name,
                role.si.name,
                units.join(", ")
            );
        }
        at(self.header, Some(&self.called(column, head)), issue)
    }

    fn row(&self, issue: Issue, row: usize) -> Issue {
        let Some(row) = self.rows.get(row) else {
            return issue;
        };
        let (fields, heads) = (row.fields.len(), self.heads.len());
        if fields == heads {
            return at(row.line, None, issue);
        }
        let code = if fields < heads {
            &refusals::LIST_TOO_SHORT
        } else {
            &refusals::LIST_TOO_LONG
        };
        let detail = format!("line {}: {fields} fields under {heads} columns", row.line);
        Issue::new(issue.pointer, code, detail)
    }

    fn cell(&self, mut issue: Issue, row: usize, column: usize) -> Issue {
        let (Some(row), Some(place)) = (self.rows.get(row), self.numbers.get(column)) else {
            return issue;
        };
        if is(&issue, &refusals::WRONG_TYPE)
            && let Some(text) = row.fields.get(*place)
        {
            issue.detail = match blank(text) {
                "" => "a number is expected, the field is empty".to_owned(),
                text => format!("a number is expected, not `{}`{}", short(text), hint(text)),
            };
        }
        let name = self.called(column, &self.heads[*place]);
        at(row.line, Some(&name), issue)
    }

    /// What a column is called in a sentence.
    fn called(&self, column: usize, head: &Head) -> String {
        match short(&head.name) {
            name if name.is_empty() => (self.numbers[column] + 1).to_string(),
            name => name,
        }
    }
}

fn is(issue: &Issue, code: &RefusalDef) -> bool {
    issue.code == code.id
}

fn at(line: usize, column: Option<&str>, mut issue: Issue) -> Issue {
    let column = column.map(|name| format!(", column {name}"));
    issue.detail = format!(
        "line {line}{}: {}",
        column.unwrap_or_default(),
        issue.detail
    );
    issue
}

fn twice(issue: Issue, member: &str) -> Issue {
    let detail = format!("`{member}` stands in the lines with `#` and as columns below them");
    Issue::new(issue.pointer, &refusals::CSV_MEMBER_TWICE, detail)
}

/// What to do about a field that is no number.
fn hint(text: &str) -> &'static str {
    let plain = |c: char| c.is_ascii_digit() || "+-.eE".contains(c);
    if text.starts_with('#') {
        "; lines with `#` stand before the header only"
    } else if text.chars().all(|c| plain(c) || c == ',' || c == ' ') && text.contains([',', ' ']) {
        "; write decimals with a point and nothing between thousands"
    } else if text.chars().all(plain) && text.contains(|c: char| c.is_ascii_digit()) {
        "; write it as JSON does: digits on both sides of the point, no plus and no zero before it"
    } else if text.starts_with(|c: char| c.is_ascii_digit() || c == '-' && text.len() > 1) {
        "; its unit stands in the header"
    } else {
        "; leave the field empty where nothing was read"
    }
}

/// A text as told, cut where it is absurdly long.
fn short(text: &str) -> String {
    text.chars().take(40).collect()
}
