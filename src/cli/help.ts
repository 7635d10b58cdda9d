const OVERVIEW = `jigwright: from one build file to a placed, checked small motor two-wheeler and the shop pack to make it.

  jigwright check FILE              what does not go together, hold, ride or get made
  jigwright pack FILE -o DIR        writes the shop pack: book, templates, cut files, lists
  jigwright new [FILE]              a build file to start from (to the screen without FILE)
  jigwright schema                  the JSON Schema of a build file
  jigwright worksheet list          the calculations, one by one
  jigwright worksheet describe ID   what one takes, gives and is based on
  jigwright worksheet run ID [FILE] runs one on JSON from FILE or standard input
  jigwright help [VERB]             more on one verb
  jigwright --version

A FILE of - is standard input. Results go to standard output, progress and errors to standard error.

Exit codes
  0  done, no finding that stops        3  command line not understood
  1  done, with findings that stop      4  could not write; what was there is as it was
  2  input missing, unreadable, invalid 5  a fault of the program

The figures are a builder's aid, not an approval: a person who can be hurt by a mistake checks them first.
`;

const ABOUT: Readonly<Record<string, string>> = {
  check: `jigwright check FILE [--variant NAME] [--units in|mm|both] [--working] [--json]

Places the bike of the build file and lists the findings, the worst first. Exit code 1 when one of them stops.
  --variant NAME   applies a named variant of the file first
  --units          inches, millimeters or both (the default)
  --working        every figure with its formula, inputs and source
  --json           the same as JSON, numbers in edge units (mm, N, N·m, MPa, kg, degrees, m/s, rpm)
`,
  pack: `jigwright pack FILE -o DIR [--variant NAME] [--units in|mm|both] [--date YYYY-MM-DD] [--json]

Writes the shop pack into DIR, all of it or nothing. DIR must be absent, empty, or a pack that jigwright wrote and
nobody changed: files of yours are never replaced. A bike with findings that stop still gets its pack, with the
findings in it, and exit code 1.
  --date           the date on the sheets (today without it); the same file and date give the same bytes
  --json           what was written, as JSON
`,
  new: `jigwright new [FILE] [--force]

Writes a complete build file to start from: change it piece by piece. Without FILE it goes to standard output.
  --force          replaces FILE if there is one
`,
  schema: `jigwright schema

Prints the JSON Schema of the build file; an editor that knows it completes and checks while you type.
`,
  worksheet: `jigwright worksheet list [--json]
jigwright worksheet describe ID [--json]
jigwright worksheet run ID [FILE] [--units in|mm|both] [--working] [--json]

run takes a JSON object from FILE or standard input; a list of objects gives a list of results. A plain number is in
the unit that describe names for the field; a text with a unit, such as "1 1/2 in", is always taken. With --json the
results are numbers in those units, with the figures beside them.
`,
};

export function helpText(about: string | undefined): string | undefined {
  return about === undefined ? OVERVIEW : ABOUT[about];
}
