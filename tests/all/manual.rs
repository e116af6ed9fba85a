//! Completions and pages of the manual: every command and option is in them, and the shell and the typesetter take them.

use crate::support::{Output, run};
use std::io::{ErrorKind, Write};
use std::process::{Command, Stdio};

const SHELLS: [&str; 5] = ["bash", "elvish", "fish", "powershell", "zsh"];

/// The commands, as the help lists them.
fn commands() -> Vec<String> {
    let help = run(&["--help"]).text;
    let (_, list) = help.split_once("Commands:\n").unwrap();
    let names = list.lines().take_while(|line| !line.is_empty());
    // A name stands two blanks in; what wraps stands further in.
    let names: Vec<String> = names
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .map(|line| line.split_whitespace().next().unwrap().to_owned())
        .filter(|name| name != "help")
        .collect();
    assert!(names.len() >= 12, "{names:?}");
    names
}

/// The long options of a command, as its help lists them.
fn options(command: &str) -> Vec<String> {
    let help = run(&[command, "--help"]).text;
    let (_, list) = help.split_once("\nOptions:\n").unwrap();
    list.lines()
        .filter_map(|line| line.trim().split(' ').find(|word| word.starts_with("--")))
        .map(|option| option.trim_end_matches(',').to_owned())
        .filter(|option| {
            option.len() > 2 && option.chars().all(|sign| sign.is_ascii_lowercase() || sign == '-')
        })
        .collect()
}

fn completions(shell: &str) -> String {
    let out = run(&["completions", shell]);
    assert_eq!((out.code, out.err.as_str()), (0, ""));
    out.text
}

/// What a program makes of this text; nothing where this machine has no such program.
fn given_to(program: &str, arguments: &[&str], text: &str) -> Option<Output> {
    let started = Command::new(program)
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn();
    let mut child = match started {
        Err(error) if error.kind() == ErrorKind::NotFound => return None,
        started => started.unwrap(),
    };
    child.stdin.take().unwrap().write_all(text.as_bytes()).unwrap();
    let out = child.wait_with_output().unwrap();
    Some(Output {
        text: String::from_utf8(out.stdout).unwrap(),
        err: String::from_utf8(out.stderr).unwrap(),
        code: out.status.code().unwrap(),
    })
}

#[test]
fn every_command_and_option_is_completed_in_every_shell() {
    let mut told = 0;
    let wanted: Vec<(String, Vec<String>)> =
        commands().into_iter().map(|command| (command.clone(), options(&command))).collect();
    for shell in SHELLS {
        let script = completions(shell);
        for (command, options) in &wanted {
            assert!(script.contains(command.as_str()), "{shell}: {command}");
            for option in options {
                // fish writes the name of a long option without its dashes.
                let bare = format!("-l {}", option.trim_start_matches('-'));
                assert!(
                    script.contains(option.as_str()) || script.contains(&bare),
                    "{shell}: {command} {option}"
                );
                told += 1;
            }
        }
    }
    assert!(told > 5 * 30, "{told}");
    assert_eq!(run(&["completions", "ksh"]).code, 2);
}

/// What bash offers for a line that ends here.
fn offered(line: &[&str]) -> Vec<String> {
    let words: Vec<String> = line.iter().map(|word| format!("'{word}'")).collect();
    let script = format!(
        "{}\nCOMP_WORDS=({})\nCOMP_CWORD={}\n_fencegust fencegust '{}' '{}'\nprintf '%s\\n' \"${{COMPREPLY[@]}}\"\n",
        completions("bash"),
        words.join(" "),
        line.len() - 1,
        line[line.len() - 1],
        line[line.len() - 2],
    );
    let out = given_to("bash", &["--noprofile", "--norc"], &script).expect("bash stands on this machine");
    assert_eq!(out.err, "");
    out.text.lines().map(str::to_owned).collect()
}

#[test]
fn bash_parses_its_completions_and_offers_what_belongs_to_each_command() {
    let out = given_to("bash", &["-n"], &completions("bash")).expect("bash stands on this machine");
    assert_eq!((out.code, out.err.as_str(), out.text.as_str()), (0, "", ""));
    let has = |line: &[&str], wanted: &[&str]| {
        let offered = offered(line);
        for word in wanted {
            assert!(offered.iter().any(|one| one == word), "{line:?} offers {offered:?}");
        }
    };
    for command in commands() {
        has(&["fencegust", ""], &[&command]);
        let options = options(&command);
        has(&["fencegust", &command, "--"], &options.iter().map(String::as_str).collect::<Vec<_>>());
    }
    has(&["fencegust", "check", "--format", ""], &["text", "json", "csv"]);
    has(&["fencegust", "catalogue", ""], &["pipe", "cloth", "wire"]);
    has(&["fencegust", "manual", "ch"], &["check", "charts"]);
    has(&["fencegust", "rule", "asce7-16/wall"], &["asce7-16/wall-coefficient", "asce7-16/wall-pressure"]);
    has(&["fencegust", "rules", "section/"], &["section/round-tube"]);
    assert_eq!(offered(&["fencegust", "che"]), ["check"]);
}

fn page(arguments: &[&str]) -> String {
    let out = run(&[&["manual"], arguments].concat());
    assert_eq!((out.code, out.err.as_str()), (0, ""));
    out.text
}

/// Requests of the manual's macros and of the typesetter that a page may hold.
const REQUESTS: [&str; 11] = [".TH", ".SH", ".SS", ".PP", ".TP", ".RS", ".RE", ".IP", ".br", ".ie", ".el"];

/// What the typesetter would say of a page, as far as it can be seen without one.
fn is_well_formed(page: &str) {
    let mut indents = 0_i32;
    let mut heads = Vec::new();
    for line in page.lines() {
        if line.starts_with('.') {
            let request = line.split(' ').next().unwrap();
            assert!(REQUESTS.contains(&request), "{line}");
            indents += i32::from(request == ".RS") - i32::from(request == ".RE");
            assert!(indents >= 0, "{line}");
            if request == ".SH" {
                heads.push(line[4..].trim_matches('"').to_owned());
            }
            assert!(line.matches('"').count() % 2 == 0, "{line}");
        }
        // Every backslash begins an escape that the typesetter knows.
        let mut rest = line;
        while let Some(at) = rest.find('\\') {
            let after = &rest[at + 1..];
            let known = ["fB", "fI", "fR", "-", "&", "(", "\\", "*", "n"];
            assert!(known.iter().any(|escape| after.starts_with(escape)), "{line}");
            rest = &after[1.min(after.len())..];
        }
    }
    assert_eq!(indents, 0);
    for head in ["NAME", "SYNOPSIS", "DESCRIPTION", "OPTIONS"] {
        assert!(heads.iter().any(|own| own == head), "{head} is not among {heads:?}");
    }
    assert!(!heads.iter().any(|head| head == "EXTRA"));
}

#[test]
fn every_command_has_a_page_that_names_its_options() {
    let plain =
        |page: &str| page.replace("\\-", "-").replace("\\fB", "").replace("\\fR", "").replace("\\fI", "");
    let program = page(&[]);
    is_well_formed(&program);
    assert!(program.contains(".TH fencegust 1"), "{program}");
    for command in commands() {
        assert!(plain(&program).contains(&format!("fencegust-{command}(1)")), "{command}");
        let page = page(&[&command]);
        is_well_formed(&page);
        assert!(page.contains(&format!(".TH fencegust-{command} 1")), "{page}");
        let text = plain(&page);
        for option in options(&command) {
            assert!(text.contains(&option), "{command} {option}");
        }
        // Where the machine has the typesetter, it finds nothing to warn of and loses no option.
        let arguments = ["-man", "-Tutf8", "-ww", "-P-c", "-rLL=200n"];
        if let Some(set) = given_to("groff", &arguments, &page) {
            assert_eq!((set.code, set.err.as_str()), (0, ""), "{command}");
            let set = set.text.replace('\u{2010}', "-").replace("_\u{8}", "");
            let shown: String = struck_once(&set);
            for option in options(&command) {
                assert!(shown.contains(&option), "{command} {option}:\n{shown}");
            }
        }
    }
}

/// Text as a terminal shows it: a letter struck over itself is one.
fn struck_once(text: &str) -> String {
    let mut shown: Vec<char> = Vec::new();
    let mut over = false;
    for sign in text.chars() {
        if sign == '\u{8}' {
            over = true;
        } else {
            if over {
                shown.pop();
                over = false;
            }
            shown.push(sign);
        }
    }
    shown.into_iter().collect()
}

#[test]
fn a_command_without_a_page_is_told_with_the_nearest() {
    let told = |name: &str| {
        let out = run(&["manual", name]);
        assert_eq!((out.code, out.text.as_str()), (2, ""));
        out.err
    };
    assert!(told("chek").contains("there is no command \"chek\": perhaps check"));
    assert!(told("xyz").contains("there are check, compare"));
}
