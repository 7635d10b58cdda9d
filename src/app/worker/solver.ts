import { readJsonText } from '../../core/build/index.ts';
import { svgOfSheet } from '../../core/drawings/index.ts';
import {
  type Build,
  buildJsonSchema,
  notChecked,
  type Outcome,
  type Proof,
  prove,
  readBuildValue,
  solve,
} from '../../core/index.ts';
import { type SlowStrength, slowStrength } from '../../core/strength/index.ts';
import { chainLineRow, screenFigure, screenFindings, screenIssue, tireGapRow } from './answer.ts';
import { differenceOf, type Held } from './difference.ts';
import type { Answer, Reply, SheetPrint, SolverApi } from './messages.ts';
import { pictureOf } from './picture.ts';
import { screenShaking } from './shaking.ts';
import { type SheetGroup, sheetNames, sheetsOf } from './sheets.ts';
import { screenSolids } from './solids.ts';
import { screenStrength, strengthPicture } from './strength.ts';

interface Current extends Held {
  readonly solution: Proof;
  readonly revision: number;
  /** Worked out when it is first asked for. */
  shaking?: SlowStrength;
  /** Drawn when they are first asked for, and anew for other units or on another day. */
  sheets?: { readonly key: string; readonly groups: readonly SheetGroup[] };
}

/** A result that a difference starts from, and the mark it was taken at. */
interface Mark {
  readonly at: number;
  readonly held: Held | undefined;
}

/** Keeps the last good result, so that its drawings can be asked for one by one. */
export function createSolver(now: () => number): SolverApi {
  let current: Current | undefined;
  let edit: Mark = { at: -1, held: undefined };
  let opening: Mark = { at: -1, held: undefined };
  const held = (revision: number): Current | undefined =>
    current?.revision === revision ? current : undefined;

  const answerOf = (build: Build, started: number): Answer => {
    const solution = prove(solve(build));
    const next = {
      revision: (current?.revision ?? 0) + 1,
      solution,
      findings: screenFindings(solution.findings),
    };
    current = next;
    if (opening.held === undefined) opening = { at: opening.at, held: next };
    return {
      revision: next.revision,
      name: build.about.name,
      findings: next.findings,
      figures: solution.figures.map(screenFigure),
      sinceEdit: differenceOf(edit.held, next),
      sinceOpening: differenceOf(opening.held, next),
      lines: solution.bike.ladder.lines.map(chainLineRow),
      gaps: solution.bike.ladder.gaps.map(tireGapRow),
      notChecked: notChecked(solution),
      milliseconds: now() - started,
    };
  };

  return {
    schema: buildJsonSchema,
    readText: (text) => {
      const read: Outcome<{ readonly value: unknown }> = readJsonText(text);
      return read.ok
        ? { ok: true, value: read.value.value }
        : { ok: false, issues: read.issues.map(screenIssue) };
    },
    solve: (file, { step, opened }): Reply => {
      const started = now();
      if (opened !== opening.at) {
        opening = { at: opened, held: undefined };
        edit = { at: step, held: undefined };
      } else if (step !== edit.at) edit = { at: step, held: current };
      const read = readBuildValue(file);
      return read.ok
        ? { ok: true, answer: answerOf(read.value, started) }
        : { ok: false, issues: read.issues.map(screenIssue) };
    },
    picture: (revision, sight, withRider) =>
      onSolution(held(revision), (solution) => pictureOf(solution, sight, withRider ? [] : ['rider'])),
    solids: (revision) => onSolution(held(revision), screenSolids),
    strength: (revision) => onSolution(held(revision), screenStrength),
    shaking: (revision) => {
      const at = held(revision);
      return at && screenShaking(at.solution, shakingOf(at));
    },
    strengthPicture: (revision, caseId, isMoved) =>
      onSolution(held(revision), (solution) => strengthPicture(solution, caseId, isMoved)),
    sheets: (revision, printed) => {
      const at = held(revision);
      return at && sheetNames(groupsOf(at, printed));
    },
    sheet: (revision, printed, id) => {
      const at = held(revision);
      const sheets = at && groupsOf(at, printed).flatMap((group) => group.sheets);
      const sheet = sheets?.find((one) => one.id === id);
      return sheet && svgOfSheet(sheet);
    },
  };
}

function shakingOf(current: Current): SlowStrength {
  current.shaking ??= slowStrength(current.solution.strength, current.solution.build);
  return current.shaking;
}

function groupsOf(current: Current, printed: SheetPrint): readonly SheetGroup[] {
  const key = `${printed.units} ${printed.date}`;
  if (current.sheets?.key !== key)
    current.sheets = { key, groups: sheetsOf(current.solution, { ...printed, shaking: shakingOf(current) }) };
  return current.sheets.groups;
}

const onSolution = <T>(held: Current | undefined, draw: (solution: Proof) => T): T | undefined =>
  held && draw(held.solution);
