import { type JsonText, readJsonText } from '../core/build/index.ts';
import { type Issue, nearestName, type Outcome, toEdgeFigure } from '../core/quantity/index.ts';
import {
  describeWorksheet,
  runWorksheet,
  type Worksheet,
  type WorksheetAnswer,
  worksheetNamed,
  worksheets,
} from '../core/worksheets/index.ts';
import { type Command, type RunWorksheetCommand, UsageError } from './args.ts';
import { EXIT, type ExitCode } from './exit.ts';
import { issueJson, issueLines, toJson } from './issues.ts';
import { startProgress } from './progress.ts';
import { figureText, figureValue } from './report.ts';
import { resultText } from './resultText.ts';
import { readText, type Terminal } from './terminal.ts';
import { worksheetPage } from './worksheetPage.ts';

type WorksheetCommand = Extract<Command, { verb: 'worksheet' }>;

export async function worksheet(command: WorksheetCommand, terminal: Terminal): Promise<ExitCode> {
  switch (command.action) {
    case 'list':
      terminal.out(
        command.json
          ? toJson(worksheets.map(({ id, title, summary }) => ({ id, title, summary })))
          : listText(),
      );
      return EXIT.done;
    case 'describe': {
      const description = describeWorksheet(named(command.id));
      terminal.out(command.json ? toJson(description) : worksheetPage(description));
      return EXIT.done;
    }
    case 'run':
      return run(command, terminal);
  }
}

function named(id: string): Worksheet {
  const found = worksheetNamed(id);
  if (found) return found;
  const nearest = nearestName(
    id,
    worksheets.map((one) => one.id),
  );
  throw new UsageError(
    `there is no worksheet "${id}"${nearest ? `; did you mean ${nearest}?` : '; see worksheet list'}`,
  );
}

function listText(): string {
  const width = Math.max(0, ...worksheets.map((one) => one.id.length));
  return worksheets.map((one) => `${one.id.padEnd(width)}  ${one.title}\n`).join('');
}

/** One object gives one result, a list gives a list; an input that is refused does not stop those after it. */
async function run(command: RunWorksheetCommand, terminal: Terminal): Promise<ExitCode> {
  const sheet = named(command.id);
  const json = readJsonText(await readText(command.file, terminal));
  if (!json.ok) return tellIssues(json.issues, command, terminal);
  const { value } = json.value;
  const inputs: readonly unknown[] = Array.isArray(value) ? value : [value];
  const progress = startProgress(terminal);
  const answers = inputs.map((input, index) => {
    progress(`${command.id}: ${index + 1} of ${inputs.length}`);
    return placed(runWorksheet(sheet, input), json.value, Array.isArray(value) ? `[${index}]` : '');
  });
  tellAnswers(sheet, answers, Array.isArray(value), command, terminal);
  return answers.every((answer) => answer.ok) ? EXIT.done : EXIT.badInput;
}

/** Issues with their path in the whole text, and its line and column. */
function placed(answer: Outcome<WorksheetAnswer>, text: JsonText, parent: string): Outcome<WorksheetAnswer> {
  if (answer.ok) return answer;
  const [first, ...rest] = answer.issues;
  return {
    ok: false,
    issues: text.place([within(first, parent), ...rest.map((issue) => within(issue, parent))]),
  };
}

function within(issue: Issue, parent: string): Issue {
  if (parent === '') return issue;
  const path =
    issue.path === '' || issue.path.startsWith('[') ? `${parent}${issue.path}` : `${parent}.${issue.path}`;
  return { ...issue, path };
}

function tellIssues(
  issues: readonly Issue[],
  { file, json }: RunWorksheetCommand,
  terminal: Terminal,
): ExitCode {
  if (json) terminal.out(toJson({ issues: issues.map(issueJson) }));
  else terminal.err(issueLines(file, issues));
  return EXIT.badInput;
}

function tellAnswers(
  sheet: Worksheet,
  answers: readonly Outcome<WorksheetAnswer>[],
  isList: boolean,
  command: RunWorksheetCommand,
  terminal: Terminal,
): void {
  if (command.json) {
    const all = answers.map(answerJson);
    terminal.out(toJson(isList ? all : all[0]));
    return;
  }
  answers.forEach((answer, index) => {
    if (isList) terminal.out(`[${index}]\n`);
    if (answer.ok) terminal.out(answerText(answer.value, describeWorksheet(sheet).output, command));
    else terminal.err(issueLines(command.file, answer.issues));
  });
}

function answerJson(answer: Outcome<WorksheetAnswer>): object {
  if (!answer.ok) return { issues: answer.issues.map(issueJson) };
  const { result, figures } = answer.value;
  return { ...(result as object), figures: figures.map(toEdgeFigure) };
}

/** Figures first, then all of the result: what is nested there is no figure. */
function answerText(
  { result, figures }: WorksheetAnswer,
  output: object,
  { units, working }: RunWorksheetCommand,
): string {
  const told = working
    ? figures.map((figure) => figureText(figure, units)).join('\n')
    : figures
        .map(({ name, symbol, value, kind }) => `${name}: ${symbol} = ${figureValue(value, kind, units)}\n`)
        .join('');
  return `${told}\nResult\n${resultText(result, output, units)}`;
}
