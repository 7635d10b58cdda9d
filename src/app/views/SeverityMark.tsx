import type { ScreenFinding } from '../worker/messages.ts';

type Severity = ScreenFinding['severity'];

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  stop: 'Stop',
  caution: 'Caution',
  note: 'Note',
};

export const SEVERITIES: readonly Severity[] = ['stop', 'caution', 'note'];

const SHAPES: Readonly<Record<Severity, string>> = {
  stop: 'M6 1h8l5 5v8l-5 5H6l-5-5V6z',
  caution: 'M10 1.5l9 16.5H1z',
  note: 'M10 1.5a8.5 8.5 0 1 0 .001 0z',
};

/** Shape and word say it; color only repeats it. */
export function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <svg className={`mark mark-${severity}`} viewBox="0 0 20 20" aria-hidden="true">
      <path d={SHAPES[severity]} />
      {severity === 'stop' && <path className="mark-sign" d="M6 10h8" />}
      {severity === 'caution' && <path className="mark-sign" d="M10 7.5v5m0 2v1" />}
      {severity === 'note' && <path className="mark-sign" d="M10 9v5m0-8v1" />}
    </svg>
  );
}
