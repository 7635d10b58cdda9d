import { pathPieces } from './pathPieces.ts';
import { fillColors, penStyles, toneColors } from './pens.ts';
import type { CircleItem, PathItem, Sheet, SheetItem, TextItem } from './sheet.ts';
import { printable, sheetFont, textWidth } from './textMetrics.ts';

const DIGITS = 4;
const ANCHORS: Readonly<Record<TextItem['anchor'], number>> = { start: 0, middle: 0.5, end: 1 };

/**
 * A sheet as one standalone SVG in millimeters. Each text is held to the width that the layout knows, so that it keeps
 * its place where the font is missing; a named part keeps its name in `data-part`.
 */
export function svgOfSheet(sheet: Sheet): string {
  const [width, height] = [num(sheet.width), num(sheet.height)];
  const family = `'${sheetFont.family}', 'DejaVu Sans', Verdana, sans-serif`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${escapeXml(sheet.title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    `<g font-family="${family}" stroke-linejoin="round" fill-rule="evenodd">`,
    ...sheet.items.map((item) => itemElement(item, sheet.height)),
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

/** Text and attribute values with the five marked-up characters written out. */
export function escapeXml(content: string): string {
  const names: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&apos;',
  };
  return printable(content).replace(/[&<>"']/g, (char) => names[char] as string);
}

/** Commands of a path in an SVG's y-down plane of this height, with true arcs. */
export function svgPathData(path: Pick<PathItem, 'vertices' | 'closed'>, height: number): string {
  const [first] = path.vertices;
  if (!first) return '';
  const at = (p: { readonly x: number; readonly y: number }): string => `${num(p.x)} ${num(height - p.y)}`;
  const steps = pathPieces(path).map((piece) => {
    if (piece.kind === 'line') return `L${at(piece.to)}`;
    const large = Math.abs(piece.sweep) > Math.PI ? 1 : 0;
    // y runs down here, so counterclockwise is the sweep that SVG calls negative.
    return `A${num(piece.radius)} ${num(piece.radius)} 0 ${large} ${piece.sweep > 0 ? 0 : 1} ${at(piece.to)}`;
  });
  return `M${at(first)}${steps.join('')}${path.closed ? 'Z' : ''}`;
}

function itemElement(item: SheetItem, height: number): string {
  const part = item.part === undefined ? '' : ` data-part="${escapeXml(item.part)}"`;
  if (item.type === 'path') return `<path d="${svgPathData(item, height)}"${paint(item)}${part}/>`;
  if (item.type === 'circle') {
    const { center, radius } = item;
    return `<circle cx="${num(center.x)}" cy="${num(height - center.y)}" r="${num(radius)}"${paint(item)}${part}/>`;
  }
  return textElement(item, height, part);
}

function textElement(item: TextItem, height: number, part: string): string {
  const width = textWidth(item.text, item.size, item.weight);
  const turn = (item.turn * Math.PI) / 180;
  const shift = ANCHORS[item.anchor] * width;
  const [x, y] = [num(item.at.x - shift * Math.cos(turn)), num(height - item.at.y + shift * Math.sin(turn))];
  const rotate = item.turn === 0 ? '' : ` transform="rotate(${num(-item.turn)} ${x} ${y})"`;
  const weight = item.weight === 'bold' ? ' font-weight="bold"' : '';
  const held = width === 0 ? '' : ` textLength="${num(width)}" lengthAdjust="spacingAndGlyphs"`;
  return `<text x="${x}" y="${y}" font-size="${num(item.size)}" fill="${toneColors[item.tone]}"${weight}${held}${rotate}${part} xml:space="preserve">${escapeXml(item.text)}</text>`;
}

function paint(item: PathItem | CircleItem): string {
  const fill = item.fill === 'none' ? 'none' : fillColors[item.fill];
  if (item.pen === 'none') return ` fill="${fill}" stroke="none"`;
  const style = penStyles[item.pen];
  const dash = style.dash.length === 0 ? '' : ` stroke-dasharray="${style.dash.map(num).join(' ')}"`;
  return ` fill="${fill}" stroke="${style.color}" stroke-width="${num(style.width)}"${dash}`;
}

function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot draw ${value}`);
  return String(Number(value.toFixed(DIGITS)) + 0);
}
