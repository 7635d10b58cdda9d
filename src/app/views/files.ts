import { download, fileText } from '../storage/browser.ts';
import type { Demo } from '../storage/demos.ts';
import { isObject, type JsonObject } from '../store/json.ts';
import type { Workshop } from './context.ts';

/** Larger than the reader takes; not even loaded. */
const MOST_BYTES = 4_000_000;

export async function openDemo({ document, screen }: Workshop, demo: Demo): Promise<void> {
  document.open(demo.name, await demo.load());
  screen.setState(nothingShown);
}

/** A file from the builder's disk; what is no JSON is told and leaves the open build as it is. */
export async function openFile({ document, screen, solver }: Workshop, file: File): Promise<void> {
  if (file.size > MOST_BYTES) {
    screen.setState({ trouble: `${file.name} was not opened: it is too large to be a build file.` });
    return;
  }
  const read = await solver.readText(await file.text());
  if (!read.ok) {
    const reasons = read.issues.map(({ text }) => text).join('; ');
    screen.setState({ trouble: `${file.name} was not opened: ${reasons}.` });
    return;
  }
  if (!isObject(read.value)) {
    screen.setState({ trouble: `${file.name} was not opened: a build file is an object with sections.` });
    return;
  }
  document.open(file.name, read.value as JsonObject);
  screen.setState(nothingShown);
}

/** The file as it is now, right or wrong: half a night's work with an error in it is worth keeping. */
export function saveFile({ document }: Workshop): void {
  const { name, file } = document.store.getState();
  download(name.endsWith('.json') ? name : `${name}.build.json`, fileText(file));
}

/** A new file must not stand beside drawings of the old one. */
const nothingShown = () => ({ answer: undefined as never, issues: [], trouble: undefined as never });
