import { toEdgeFigure } from '../core/quantity/index.ts';
import type { Command } from './args.ts';
import { changeJson, changesText } from './changes.ts';
import type { Core, Solved } from './core.ts';
import { EXIT, type ExitCode } from './exit.ts';
import { issueJson, issueLines, toJson } from './issues.ts';
import { startProgress } from './progress.ts';
import { countBySeverity, countLine, figureText, findingJson, findingText, worstFirst } from './report.ts';
import { readText, type Terminal } from './terminal.ts';

type CheckCommand = Extract<Command, { verb: 'check' }>;

/** Reads, solves and tells the findings. */
export async function check(command: CheckCommand, core: Core, terminal: Terminal): Promise<ExitCode> {
  const solved = solveText(command, await readText(command.file, terminal), core, terminal);
  if (solved === undefined) return EXIT.badInput;
  terminal.out(command.json ? checkJson(command, solved) : checkText(command, solved));
  return exitOf(solved);
}

/** The solved build of a text, or undefined after its issues were told. */
export function solveText(
  { file, variant, json }: Pick<CheckCommand, 'file' | 'variant' | 'json'>,
  text: string,
  core: Core,
  terminal: Terminal,
): Solved | undefined {
  const progress = startProgress(terminal);
  const build = core.readBuild(text, variant === undefined ? {} : { variant });
  if (build.ok) {
    progress('placing the bike');
    const typed = variant === undefined ? undefined : core.readBuild(text);
    return typed?.ok ? core.solve(build.value, typed.value) : core.solve(build.value);
  }
  if (json) terminal.out(toJson({ file, issues: build.issues.map(issueJson) }));
  else terminal.err(issueLines(file, build.issues));
  return undefined;
}

export function exitOf({ findings }: Solved): ExitCode {
  return findings.some((finding) => finding.severity === 'stop') ? EXIT.stops : EXIT.done;
}

function checkText({ units, working }: CheckCommand, { findings, figures, moved = [] }: Solved): string {
  const told = worstFirst(findings).map((finding) => findingText(finding, units));
  const changed = moved.length > 0 ? [changesText(moved, units)] : [];
  const shown = working ? figures.map((figure) => figureText(figure, units)) : [];
  return [...told, ...changed, ...shown, `${countLine(findings)}\n`].join('\n');
}

function checkJson(
  { file, variant, working }: CheckCommand,
  { findings, figures, moved = [] }: Solved,
): string {
  return toJson({
    file,
    ...(variant === undefined ? {} : { variant }),
    counts: countBySeverity(findings),
    findings: worstFirst(findings).map(findingJson),
    ...(moved.length > 0 ? { moved: moved.map(changeJson) } : {}),
    ...(working ? { figures: figures.map(toEdgeFigure) } : {}),
  });
}
