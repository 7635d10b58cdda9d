/**
 * What touches, in words: `drives.final.to` is the driven sprocket of the drive that the build file calls `final`.
 * Both sides of a mirrored part have one name.
 */
export function contactName(part: string): string {
  const [group, name = '', end] = part.split('.');
  if (group === 'drives') return `${end === 'from' ? 'driver' : 'driven'} sprocket of ${words(name)}`;
  if (group === 'stacks') return `end of ${words(name)}`;
  if (group === 'brakes') return `${words(name)} brake`;
  return words(name === '' ? part : name);
}

/** Names are written with hyphens or capitals in the file and with spaces in a sentence. */
const words = (name: string): string =>
  name.replaceAll('-', ' ').replace(/([a-z])([A-Z])/g, (_, a, b) => `${a} ${b.toLowerCase()}`);
