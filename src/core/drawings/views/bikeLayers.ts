import { driveLayers } from './driveShapes.ts';
import { engineLayers } from './engineShapes.ts';
import { frameLayers, plateLayers } from './frameShapes.ts';
import { barLayers, forkLayers } from './frontShapes.ts';
import { riderLayers } from './riderShapes.ts';
import type { Layer, Projector, SceneGroup, SceneInput } from './scene.ts';
import { bodyLayers, pegLayers, seatLayers } from './seatingShapes.ts';
import { wheelLayers } from './wheelShapes.ts';

/** Every part of the bike but what is hidden, as one projection sees it; the frame is always drawn. */
export function bikeLayers(
  p: Projector,
  scene: SceneInput,
  options: { readonly hide?: readonly SceneGroup[] | undefined; readonly bodies: 'phantom' | 'solid' },
): readonly Layer[] {
  const hidden = new Set(options.hide ?? []);
  const groups: readonly (readonly [SceneGroup | 'frame', () => readonly Layer[]])[] = [
    ['rider', () => riderLayers(p, scene)],
    ['wheels', () => wheelLayers(p, scene)],
    ['frame', () => [...forkLayers(p, scene), ...frameLayers(p, scene)]],
    ['bars', () => barLayers(p, scene)],
    ['engine', () => engineLayers(p, scene)],
    ['drive', () => driveLayers(p, scene)],
    ['plates', () => plateLayers(p, scene)],
    ['seat', () => seatLayers(p, scene, options.bodies)],
    ['bodies', () => bodyLayers(p, scene, options.bodies)],
    ['frame', () => pegLayers(p, scene)],
  ];
  return groups.flatMap(([group, draw]) => (group !== 'frame' && hidden.has(group) ? [] : draw()));
}
