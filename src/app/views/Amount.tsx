/** A printed quantity that breaks only between its two systems: `101.8 mm` / `(4 1/64 in)`. */
export function Amount({ text }: { readonly text: string }) {
  const at = text.indexOf(' (');
  if (at < 0) return <span className="amount">{text}</span>;
  return (
    <>
      <span className="amount">{text.slice(0, at)}</span> <span className="amount">{text.slice(at + 1)}</span>
    </>
  );
}
