/** How a kind of part looks on the screen: shop materials, matt. */
export interface ScreenLook {
  readonly color: string;
  readonly opacity: number;
  readonly roughness: number;
  readonly metalness: number;
}

export const EDGE_COLOR = '#14130f';
/** Marks what belongs to the field being worked on. */
export const MARK_COLOR = '#d2491c';

const look = (color: string, roughness = 0.7, metalness = 0, opacity = 1): ScreenLook => ({
  color,
  roughness,
  metalness,
  opacity,
});

const looks: Readonly<Record<string, ScreenLook>> = {
  frame: look('#4a5258', 0.55, 0.1),
  fork: look('#8b9195', 0.45, 0.25),
  plate: look('#a9aeb0', 0.6, 0.15),
  shaft: look('#c6cacb', 0.45, 0.3),
  engine: look('#87898a', 0.75, 0.05),
  chain: look('#6d6250', 0.6, 0.2),
  disc: look('#b4b8ba', 0.4, 0.3),
  tire: look('#2b2b2d', 0.95),
  wheel: look('#d3d2cd', 0.6, 0.1),
  seat: look('#4b3a2f', 0.85),
  body: look('#7d3420', 0.65),
  rider: look('#c4b199', 1, 0, 0.28),
  // The bike as it stands, beside tubes that are colored by their use.
  faint: look('#8b8780', 1, 0, 0.1),
};

export const lookOf = (kind: string): ScreenLook => looks[kind] ?? look('#999999');
