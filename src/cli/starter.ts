import demo from '../../demo/light.build.json' with { type: 'json' };

/** Longest line that a list or object is written on whole. */
const LINE_WIDTH = 100;

/**
 * A complete build file to start from: the light demo under the builder's own name, since a file in which every
 * section is there and checks is quicker to change than an empty one is to fill. What the demo made and measured is left
 * out: nobody has yet.
 */
export function starterBuild(): string {
  const { about: _about, $schema: _schema, made: _made, measured: _measured, version, ...rest } = demo;
  const starter = {
    $schema: './build.schema.json',
    version,
    about: {
      name: 'My build',
      summary:
        'Started from an invented build: nothing here is yours until you put your own measures in. ' +
        'Change a few values, run check, and go on.',
      units: 'both',
    },
    ...rest,
  };
  return `${layOut(starter, '')}\n`;
}

/** JSON with what fits on a line kept on it, as a person would write it. */
function layOut(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const flat = JSON.stringify(value, null, 1)
    .replace(/\n\s*/g, ' ')
    .replace(/\[ /g, '[')
    .replace(/ \]/g, ']');
  if (indent !== '' && indent.length + flat.length <= LINE_WIDTH) return flat;
  const deeper = `${indent}  `;
  const isList = Array.isArray(value);
  const lines = isList
    ? value.map((item) => `${deeper}${layOut(item, deeper)}`)
    : Object.entries(value).map(([key, item]) => `${deeper}${JSON.stringify(key)}: ${layOut(item, deeper)}`);
  const [open, close] = isList ? '[]' : '{}';
  return `${open}\n${lines.join(',\n')}\n${indent}${close}`;
}
