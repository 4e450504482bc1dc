import { drawAdjoining } from './draw-adjoining.ts';
import { drawDimensions, drawNotes } from './draw-annotations.ts';
import { drawCoverage } from './draw-coverage.ts';
import { drawCylinders } from './draw-cylinders.ts';
import { drawDevices } from './draw-devices.ts';
import { drawEnclosures } from './draw-enclosures.ts';
import { drawLabels } from './draw-labels.ts';
import { drawJets, drawNozzles } from './draw-nozzles.ts';
import { drawObstructions } from './draw-obstructions.ts';
import { drawPipes } from './draw-pipes.ts';
import { drawSupports } from './draw-supports.ts';
import type { Paint } from './paint.ts';
import { type Scene, isShown } from './scene.ts';

/** How the things of a scene are drawn without their texts, from the lowest to the topmost: one paint a kind. */
export const thingPaints = (scene: Scene): Paint[] => [
  (pen, view) => isShown(scene, 'adjoining') && drawAdjoining(pen, view, scene),
  (pen, view) => isShown(scene, 'obstructions') && drawObstructions(pen, view, scene),
  (pen, view) => isShown(scene, 'coverage') && drawCoverage(pen, view, scene),
  (pen, view) => isShown(scene, 'enclosures') && drawEnclosures(pen, view, scene),
  (pen, view) => isShown(scene, 'jets') && drawJets(pen, view, scene),
  (pen, view) => isShown(scene, 'pipes') && drawCylinders(pen, view, scene),
  (pen, view) => isShown(scene, 'pipes') && drawPipes(pen, view, scene),
  (pen, view) => isShown(scene, 'nozzles') && drawNozzles(pen, view, scene),
  (pen, view) => isShown(scene, 'pipes') && drawSupports(pen, view, scene),
  (pen, view) => isShown(scene, 'devices') && drawDevices(pen, view, scene),
  (pen, view) => isShown(scene, 'dimensions') && drawDimensions(pen, view, scene),
  (pen, view) => isShown(scene, 'notes') && drawNotes(pen, view, scene),
];

/** How a whole scene is drawn, texts on top. */
export const scenePaints = (scene: Scene): Paint[] => [...thingPaints(scene), (pen, view) => drawLabels(pen, view, scene)];
