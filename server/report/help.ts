/** What `npm run report -- help` prints. */

export const HELP = `Reports over the notes that Snackstop keeps, for the terminal. Nothing but restore writes into the
folder, and no report takes it away from a Snackstop that is running there.

  npm run --silent report -- load     [--season S] [--dog NAME] [--on DAY] [--format json|csv]
  npm run --silent report -- watch    [--season S] [--dog NAME] [--on DAY] [--format json|csv]
  npm run --silent report -- search   WORDS [--season S] [--dog NAME] [--on DAY] [--limit N] [--format json|csv]
  npm run --silent report -- sheet    --dog NAME [--season S] [--on DAY]
  npm run --silent report -- summary  [--season S] [--on DAY]
  npm run --silent report -- export   [--season S|all] [--format csv|xlsx] [--to FILE] [--replace]
  npm run --silent report -- export   --store [--to FILE] [--replace]
  npm run --silent report -- restore  FILE --data FOLDER

  load      the load of each dog on a day: distances, ratios, rest
  watch     findings as episodes: what is open, what came back, how many days, runs and metres lie between
  search    what the page Search finds for the same words
  sheet     a dog's records for its veterinarian, as JSON
  summary   the season at a glance, as JSON
  export    a season as CSV files with their description in a ZIP (csv), or as a spreadsheet (xlsx);
            with --store the whole folder as one ZIP to keep
  restore   the folder of such a ZIP again, byte for byte, into a folder that is empty

  --data FOLDER  where the notes are kept; else SNACKSTOP_DATA, else snackstop in XDG_DATA_HOME,
                 else .snackstop in the home folder. restore wants it written out
  --season S     like 2026-27; the one that is shown in the pages when left out
  --dog NAME     a call name, an alias or a former name
  --on DAY       YYYY-MM-DD, the last day that counts; today, or the last day with a run of a season that is over
  --format F     json (as it comes when left out) or csv: RFC 4180, UTF-8. Distances in metres
  --to FILE      where an export goes; - or nothing writes it to standard output. A file that is there already is
                 left alone unless --replace is given
  --limit N      most hits of a search; 100 when left out

Answers go to standard output, everything else to standard error. The exit status is 0 for an answer, 1 where
the folder or file can't be used, 2 where the command line is not right.`;
