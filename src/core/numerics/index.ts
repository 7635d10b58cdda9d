export { type Bracket, bracketRoot, findRoot, type RootOptions, type RootOutcome } from './root.ts';
