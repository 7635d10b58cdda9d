import { readFileSync } from 'node:fs';
import { type Build, readBuild, type Solution, solve } from '../../src/core/index.ts';
import { type PartRow, shopWork } from '../../src/core/shop/index.ts';

/** The build file of a trade story, with one of its variants; throws where the reader has issues. */
export function storyBuild(name: string, variant?: string): Build {
  const text = readFileSync(new URL(`../published/stories/${name}.build.json`, import.meta.url), 'utf8');
  const build = readBuild(text, variant === undefined ? {} : { variant });
  if (!build.ok) throw new Error(JSON.stringify(build.issues));
  return build.value;
}

export const solvedStory = (name: string, variant?: string): Solution => solve(storyBuild(name, variant));

/** Rule of each finding, without the part. */
export const rulesOf = ({ findings }: Solution): readonly string[] =>
  findings.map((finding) => finding.id.split(':')[0]!);

/** Parts list of a solution. */
export const partsOf = (solution: Solution): readonly PartRow[] => shopWork(solution).parts;
