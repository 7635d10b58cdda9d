import type { ScreenSource } from '../worker/messages.ts';

export function SourceLine({ source: { title, where } }: { readonly source: ScreenSource }) {
  return (
    <p className="source">
      Source: {title}
      {where && ` — ${where}`}
    </p>
  );
}
