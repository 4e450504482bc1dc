import { PIPE_SCHEDULES, PIPE_SIZES } from '../profile/pipe-table.ts';
import { ASSEMBLY_KINDS, unitProfileSchema } from '../profile/unit-profile.ts';
import { z } from '../profile/zod.ts';
import { EXPOSURES, basisSchema } from './basis-of-design.ts';
import { PAPER_IDS } from './paper-ids.ts';

/** Version of the plan file that this program writes. An older one is migrated, a newer one refused. */
export const PLAN_VERSION = 5;

/** Nothing on a plan lies farther from its origin than this [m]; a larger number is damage. */
export const FARTHEST_m = 100_000;

/** Largest coordinate of an imported file, in its own units, and farthest place of its origin [m]: surveyed drawings count from far away. */
export const FARTHEST_IN_FILE = 1e10;

const text = z.string().max(20_000);
const label = z.string().max(200);
/** An id looks a part up in a record, so it may not be a name that every object answers to by itself. */
const id = z
  .string()
  .regex(/^(?!(?:constructor|hasOwnProperty|isPrototypeOf|propertyIsEnumerable|toLocaleString|toString|valueOf)$)[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/, 'an id has letters, digits, dots and dashes');
const coordinate = z.number().min(-FARTHEST_m).max(FARTHEST_m);
const length = z.number().min(0).max(FARTHEST_m);
const angle = z.number().min(-1000).max(1000);
const point = z.strictObject({ x: coordinate, y: coordinate });
const fileCoordinate = z.number().min(-FARTHEST_IN_FILE).max(FARTHEST_IN_FILE);
const filePoint = z.strictObject({ x: fileCoordinate, y: fileCoordinate });
const point3 = z.strictObject({ x: coordinate, y: coordinate, z: coordinate });
const ring = z.array(point).min(3).max(2000);
/** Answered, or nobody has looked. */
const known = z.boolean().nullable();
const recordOf = <T extends z.ZodType>(value: T) => z.record(id, value);

export const revisionSchema = z.strictObject({ mark: label, date: label, text });

export const infoSchema = z.strictObject({
  project: label,
  site: label,
  client: label,
  drawnBy: label,
  checkedBy: label,
  approvedBy: label,
  sheetPrefix: label,
  code: label,
  edition: label,
  notes: text,
  /** How far the job has come: what is asked of a record made on site is asked once it is built. */
  state: z.enum(['design', 'built']),
  revisions: z.array(revisionSchema).max(200),
});

const onPaper = z.number().min(-5000).max(5000);

/** Where a view lies on paper, as the user placed it; what is null is as the program chooses. */
export const placedViewSchema = z.strictObject({
  /** Title of the sheet that it was moved to. */
  sheet: label.nullable(),
  /** Top left corner of the view [mm]. */
  at: z.strictObject({ x_mm: onPaper, y_mm: onPaper }).nullable(),
  scale: z.number().min(1).max(10_000).nullable(),
  /** Part of the plan that it shows. */
  crop: z.strictObject({ least: point, most: point }).nullable(),
});

/** Words that the user put on one sheet, their top left corner [mm]. */
export const sheetNoteSchema = z.strictObject({ id, sheet: label, x_mm: onPaper, y_mm: onPaper, width_mm: z.number().min(5).max(2000), text });

/** How the sheets are laid out. What the user placed stays when they are composed anew. */
export const sheetsSchema = z.strictObject({
  /** Paper and scale that plans are printed at; null leaves the choice to what fits. */
  paper: z.enum(PAPER_IDS).nullable(),
  scale: z.number().min(1).max(10_000).nullable(),
  /** The user's own head of the title block. */
  titleBlock: z.strictObject({ /** Asset with a picture. */ logo: id.nullable(), lines: z.array(z.strictObject({ label, value: label })).max(8) }),
  /** Leaves a clear box for stamps on every sheet. */
  hasStampBox: z.boolean(),
  /** By the key of the view. */
  views: z.record(label, placedViewSchema),
  notes: recordOf(sheetNoteSchema),
  /** Where the text of a printed dimension was put: its middle from the middle of what is measured, and its line from the thing [mm], by the key of the dimension. */
  dimensions: z.record(z.string().max(400), z.strictObject({ along_mm: onPaper, off_mm: onPaper })),
});

export const settingsSchema = z.strictObject({
  /** How lengths are shown; both ways are understood when typed. */
  lengths: z.enum(['feet', 'metric']),
  /** Distance between snap grid lines [m]. */
  grid_m: z.number().min(0.001).max(10),
  /** How far a dimension on site may be off from the drawn one, either way [m]. */
  siteTolerance_m: z.number().min(0).max(1),
  sheets: sheetsSchema,
});

/** Two picked places of the underlay, in its own units, and the distance between them on site. */
export const knownLengthSchema = z.strictObject({ a: filePoint, b: filePoint, distance_m: z.number().positive().max(FARTHEST_m) });

export const underlaySchema = z.strictObject({
  id,
  name: label,
  /** Asset that holds the imported file. */
  asset: id,
  kind: z.enum(['dxf', 'pdf', 'svg', 'png', 'jpeg']),
  /** Page of a PDF, counted from 1. */
  page: z.number().int().min(1).max(10_000),
  /** Where the file's origin lies on the plan; far away when the drawing does. */
  at: filePoint,
  rotation_rad: angle,
  /** Metres on site per unit of the file; null until calibrated, drawn then at 1. */
  metresPerUnit: z.number().positive().max(1e6).nullable(),
  /** How the scale came about. */
  calibration: z.enum(['none', 'file-units', 'two-points']),
  /** First entry sets the scale of a two-point calibration; the others check it. */
  knownLengths: z.array(knownLengthSchema).max(20),
  opacity: z.number().min(0).max(1),
  hiddenLayers: z.array(label).max(5000),
  visible: z.boolean(),
  locked: z.boolean(),
});

export const wallSchema = z.strictObject({
  construction: z.enum(['unknown', 'block', 'concrete', 'stud-gypsum', 'panel', 'glass', 'other']),
  /** null: not yet known. */
  loadBearing: z.boolean().nullable(),
  /** Greatest pressure difference the wall stands [Pa]; null: not yet known. */
  allowablePressure_Pa: z.number().min(0).max(1e6).nullable(),
  /** Weight that the wall bears at the rail of one cylinder, as a structural engineer declared it [N]; null: not yet declared. */
  capacity_N: z.number().min(0).max(1e6).nullable(),
  /** How far up it goes: from slab to slab, or only to the ceiling under a void. */
  reaches: z.enum(['unknown', 'slab', 'ceiling']),
});

/** A corner and the wall that runs from it to the next corner; the corner's id names that wall. */
export const cornerSchema = z.strictObject({ id, x: coordinate, y: coordinate, wall: wallSchema });

/** Where a relief vent leads on: one thing that gas passes on its way out. */
export const ventStepSchema = z.strictObject({
  name: label,
  through: z.enum(['duct', 'louvre', 'room', 'corridor', 'exit', 'protected', 'outdoors']),
  /** Free area [m²]; null: not yet known. Outdoors needs none. */
  freeArea_m2: z.number().min(0).max(1000).nullable(),
});

export const openingSchema = z.strictObject({
  id,
  name: label,
  kind: z.enum(['door', 'relief-vent', 'damper', 'grille', 'penetration', 'window']),
  /** Corner id of the wall it is in. */
  wall: id,
  /** Along the wall from its corner to the middle of the opening [m]. */
  along_m: length,
  width_m: length,
  /** Lower edge above the finished floor [m]. */
  bottom_m: coordinate,
  height_m: length,
  /** Which way a door leaf swings; `none` for anything else. */
  swing: z.enum(['none', 'in', 'out']),
  /** Hinge at the end nearer the wall's corner, or the other. */
  hinge: z.enum(['start', 'end']),
  /** Free area [m²] of a vent or leak; null: not yet known. */
  freeArea_m2: z.number().min(0).max(1000).nullable(),
  leadsTo: z.enum(['unknown', 'outdoors', 'corridor', 'room', 'exit']),
  /** Closes before discharge; null: not yet known. */
  closes: z.boolean().nullable(),
  /** Gap under a door leaf while it is shut [m]; null for anything else, or while unknown. */
  undercut_m: length.nullable(),
  /** What gas passes behind a relief vent until it is outdoors, in order; empty for anything else, and where `leadsTo` says all. */
  ventPath: z.array(ventStepSchema).max(20),
  /** How a penetration is made good around the pipe; null for anything else, or while nothing is known. */
  crossing: z
    .strictObject({
      /** Inside of the sleeve [m]; null: not yet known. */
      sleeve_m: length.nullable(),
      /** Fire resistance of the wall, as the drawings say it: "1 h"; blank: not yet known. */
      rating: label,
      /** Fire-stop system by its listing number; blank: not yet chosen. */
      seal: label,
    })
    .nullable(),
});

export const ceilingZoneSchema = z.strictObject({
  id,
  name: label,
  outline: ring,
  height_m: length,
});

export const voidSchema = z.strictObject({
  /** Clear depth [m]. */
  depth_m: z.number().positive().max(100),
  isProtected: z.boolean(),
  /** Why it is left out of the protection, and who signed that; null: nobody did. */
  exclusion: z.strictObject({ reason: text, by: label, date: label }).nullable(),
});

/** Flow that a door fan needed to hold a pressure difference, one way or the other. */
export const fanReadingSchema = z.strictObject({
  direction: z.enum(['in', 'out']),
  pressure_Pa: z.number().positive().max(1000),
  flow_m3_s: z.number().positive().max(1000),
});

/** What is known of the leaks of an enclosure. */
export const leakageSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('unknown') }),
  /** An equivalent leakage area at a pressure difference, listed or estimated. */
  z.strictObject({ kind: z.literal('area'), area_m2: z.number().positive().max(1000), pressure_Pa: z.number().positive().max(1000) }),
  z.strictObject({ kind: z.literal('door-fan'), readings: z.array(fanReadingSchema).max(100) }),
]);

/** What people in the enclosure need. */
export const peopleSchema = z.strictObject({
  /** Longest stay that the design counts on. */
  exposure: z.enum(EXPOSURES),
  /** Time that everybody needs to leave [s]; null: not yet known. */
  egress_s: z.number().min(0).max(3600).nullable(),
  /** From the alarm to the discharge [s]; null: not yet chosen. */
  delay_s: z.number().min(0).max(3600).nullable(),
});

/** One row of the release matrix of an enclosure. */
export const shutdownSchema = z.strictObject({
  id,
  name: label,
  kind: z.enum(['damper', 'fan', 'door', 'power', 'fuel', 'process', 'other']),
  /** Opening, duct or diffuser of the plan that it shuts; null: something that is not drawn. */
  target: id.nullable(),
  on: z.enum(['first-detector', 'second-detector', 'manual-release', 'release']),
});

export const enclosureSchema = z.strictObject({
  id,
  name: label,
  /** Finished wall faces, one closed simple ring, last corner not repeated. */
  outline: z.array(cornerSchema).min(3).max(2000),
  /** Shafts and columns cut out of the enclosure, each a closed ring. */
  holes: z.array(z.array(cornerSchema).min(3).max(2000)).max(500),
  /** Finished floor to finished ceiling [m]; null: not yet known. */
  height_m: length.nullable(),
  /** A sloped ceiling: `height_m` holds at `at`, rising by `rise` per metre toward `direction_rad`. */
  slope: z.strictObject({ at: point, direction_rad: angle, rise: z.number().min(-10).max(10) }).nullable(),
  ceilingZones: recordOf(ceilingZoneSchema),
  underFloor: voidSchema.nullable(),
  ceilingVoid: voidSchema.nullable(),
  openings: recordOf(openingSchema),
  temperature: z.strictObject({ least_K: z.number().min(150).max(400), greatest_K: z.number().min(150).max(400) }).nullable(),
  altitude_m: z.number().min(-1000).max(6000).nullable(),
  occupancy: z.enum(['unknown', 'normally-occupied', 'normally-unoccupied', 'unoccupiable']),
  hazardClass: z.enum(['unknown', 'A-surface', 'A-higher', 'B', 'C']),
  /** Design concentration [vol %]; null: not yet chosen. */
  concentration_pct: z.number().min(0).max(99).nullable(),
  people: peopleSchema,
  leakage: leakageSchema,
  /** Lowest place that must stay protected, above the finished floor, below 0 in an under-floor void [m]: nitrogen mixed with air leaves from below; null: not yet known. */
  lowestProtected_m: coordinate.nullable(),
  /** What lies on the other sides, in words. */
  adjacent: text,
  ceiling: z.strictObject({
    make: z.enum(['unknown', 'hard', 'tiles', 'open']),
    /** Tiles are clipped down within this distance of each nozzle [m]; null: not, or not yet known. */
    clipped_m: length.nullable(),
  }),
  /** Loudest usual noise in it [dB A]; null: not yet known. */
  ambientSound_dBA: z.number().min(0).max(140).nullable(),
  /** Enclosures with the same name here are discharged together; blank: by itself. */
  dischargedWith: label,
  /** What is shut or switched off, and on what: the rows of the release matrix. */
  shutdowns: recordOf(shutdownSchema),
  afterDischarge: z.strictObject({
    extract: z.enum(['unknown', 'not-required', 'fixed', 'portable']),
    /** Of the extract [m³/s]; null: not yet known. */
    extractFlow_m3_s: z.number().min(0).max(1000).nullable(),
    /** How people come back in, in words; blank: not yet said. */
    procedure: text,
    /** Whether an oxygen meter is at hand for it; null: not yet known. */
    hasMeter: z.boolean().nullable(),
  }),
});

export const obstructionSchema = z.strictObject({
  id,
  name: label,
  kind: z.enum(['beam', 'duct', 'rack', 'cabinet', 'column', 'light', 'tray', 'panel', 'partition', 'live-part', 'work-place', 'other']),
  footprint: ring,
  bottom_m: coordinate,
  top_m: coordinate,
  /** Direction in which an electrical panel opens [rad]; null for anything else, or while unknown. */
  front_rad: angle.nullable(),
  /** Highest voltage to earth of a live part that can be touched [V]; null for anything else, or while unknown. */
  voltage_V: z.number().min(0).max(1e6).nullable(),
  /** Whether loose or light things lie on it that a jet would blow about; null: nobody has looked. */
  hasLooseItems: z.boolean().nullable(),
  /** Whether it holds running disk drives, which noise can harm; null: nobody has looked. */
  hasDrives: z.boolean().nullable(),
  /** Agent passes through: not deducted from the volume. */
  isPermeable: z.boolean(),
});

export const dimensionSchema = z.strictObject({
  id,
  a: point,
  b: point,
  /** Distance of the dimension line from the measured places, left of a → b positive [m]. */
  offset_m: coordinate,
});

export const noteSchema = z.strictObject({ id, at: point, text });

const placed = {
  id,
  name: label,
  at: point,
  /** Middle of it above the finished floor [m]; null: not yet known. */
  height_m: coordinate.nullable(),
  /** Where it looks or opens to [rad]; null: every way, or not yet known. */
  facing_rad: angle.nullable(),
};

export const SIGNS = ['entrance', 'inside', 'adjacent', 'cylinder', 'manual-release'] as const;
export const SPACE_KINDS = ['room', 'under-floor', 'ceiling-void'] as const;

/** Something small with its place on the plan that people see, press or are warned by, or that watches or moves the air. `null` says that nobody has looked. */
export const deviceSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...placed, kind: z.literal('detector'), senses: z.enum(['smoke', 'heat', 'aspirating', 'flame']).nullable(), /** Detection circuit it counts to; blank: not yet known. */ zone: label, space: z.enum(SPACE_KINDS) }),
  z.strictObject({ ...placed, kind: z.literal('sounder'), isHeard: z.boolean(), isSeen: z.boolean(), /** At 3 m [dB A]. */ sound_dBA: z.number().min(0).max(160).nullable(), /** Of its light [cd]. */ light_cd: z.number().min(0).max(10_000).nullable() }),
  z.strictObject({ ...placed, kind: z.literal('sign'), sign: z.enum(SIGNS), wording: text }),
  z.strictObject({ ...placed, kind: z.literal('manual-release'), isGuarded: known }),
  z.strictObject({ ...placed, kind: z.literal('abort'), /** Works only while it is held. */ isHeld: known, /** The manual release works although it is held. */ yieldsToRelease: known }),
  z.strictObject({ ...placed, kind: z.literal('disconnect'), isKeyed: known, isSupervised: known }),
  z.strictObject({ ...placed, kind: z.literal('lock-out-valve'), isSupervised: known }),
  z.strictObject({ ...placed, kind: z.literal('door-button') }),
  z.strictObject({ ...placed, kind: z.literal('control-panel') }),
  z.strictObject({ ...placed, kind: z.literal('diffuser'), air: z.enum(['supply', 'return', 'extract']) }),
  z.strictObject({ ...placed, kind: z.literal('air-intake') }),
]);

/** A space beside, under or over the enclosures that agent or pressure may reach. */
export const adjoiningSchema = z.strictObject({
  id,
  name: label,
  outline: ring,
  kind: z.enum(['unknown', 'room', 'corridor', 'exit', 'pit', 'shaft', 'outdoors']),
  /** Its floor above the finished floor of the level [m]. */
  floor_m: coordinate,
  /** What was found about gas that drifts into it. */
  gas: z.enum(['not-assessed', 'does-not-reach', 'alarmed', 'ventilated']),
  note: text,
});

export const levelSchema = z.strictObject({
  id,
  name: label,
  floorElevation_m: coordinate,
  underlays: recordOf(underlaySchema),
  enclosures: recordOf(enclosureSchema),
  obstructions: recordOf(obstructionSchema),
  devices: recordOf(deviceSchema),
  adjoining: recordOf(adjoiningSchema),
  dimensions: recordOf(dimensionSchema),
  notes: recordOf(noteSchema),
});

/** What harms a cylinder where it stands. */
export const EXPOSED_TO = ['sun', 'heat', 'water', 'vehicles', 'weather'] as const;

/** What holds the rail of a cylinder to its wall, all allowable values as the anchor's maker gives them. */
export const anchorsSchema = z.strictObject({
  kind: label,
  count: z.number().int().min(1).max(50),
  tension_N: z.number().min(0).max(1e6),
  shear_N: z.number().min(0).max(1e6),
  /** To the nearest edge of the wall, and the least that the maker allows. */
  edge_m: length,
  leastEdge_m: length,
});

export const cylinderSchema = z.strictObject({
  id,
  name: label,
  /** Axis of the cylinder on the plan. */
  at: point,
  mounting: z.enum(['wall', 'floor']),
  /** Direction from the cylinder to the wall behind it [rad]. */
  back_rad: angle,
  /** Clamp rail above the finished floor [m]; null: not yet known. */
  railHeight_m: length.nullable(),
  /** Further rails, straps or chains that hold it, above the finished floor [m]. */
  restraints_m: z.array(length).max(10),
  /** null: not yet chosen. */
  anchors: anchorsSchema.nullable(),
  /** Direction in which the outlet of its valve points [rad]; null: not yet known. */
  outlet_rad: angle.nullable(),
  /** Where its hose ends, at the first rigid part of the discharge assembly; null: not yet known. */
  hoseEnd: point3.nullable(),
  /** Pressure gauge: above the finished floor, and the direction in which it is read; null: not yet known. */
  gauge: z.strictObject({ height_m: length, facing_rad: angle }).nullable(),
  /** Temperatures where it stands; null: those of the enclosure it stands in. */
  storage: z.strictObject({ least_K: z.number().min(150).max(400), greatest_K: z.number().min(150).max(400) }).nullable(),
  /** What it is exposed to where it stands; null: nobody has looked yet. */
  exposedTo: z.array(z.enum(EXPOSED_TO)).max(EXPOSED_TO.length).nullable(),
});

/** What is built in at a node besides what the geometry demands; at an end of pipe: why it ends. */
export const NODE_PARTS = ['union', 'coupling', 'street-elbow', 'dirt-trap', 'drain', 'cap', 'plug'] as const;

export const nodeSchema = z.strictObject({ id, at: point3, part: z.enum(NODE_PARTS).nullable() });

export const pipeSchema = z.strictObject({
  id,
  from: id,
  to: id,
  size: z.enum(PIPE_SIZES),
  schedule: z.enum(PIPE_SCHEDULES),
  material: z.enum(['black-steel', 'galvanized-steel', 'stainless-steel']),
  joint: z.enum(['threaded', 'welded', 'grooved']),
  /** Thickness of what is wrapped around it [m]; 0: bare. */
  insulation_m: z.number().min(0).max(1),
  /** Centre to centre as it was measured on site, in place of the length drawn [m]; null: not measured. */
  measured_m: z.number().positive().max(FARTHEST_m).nullable(),
});

export const nozzleSchema = z.strictObject({
  id,
  name: label,
  /** Node at its orifice. */
  node: id,
  /** Directions of its holes [rad], counter-clockwise from east, before `rotation_rad`. */
  holes_rad: z.array(angle).max(360),
  rotation_rad: angle,
  /** Axis against straight down [rad]. */
  tilt_rad: z.number().min(0).max(Math.PI),
  /** Area of all its holes [m²]; null: not yet known. */
  orificeArea_m2: z.number().min(0).max(1).nullable(),
  /** Space it serves; null: the one it hangs in. */
  serves: z.strictObject({ enclosure: id, space: z.enum(['room', 'under-floor', 'ceiling-void']) }).nullable(),
});

/** What stands before a manifold stands once for each cylinder, what follows once for all. */
export const assemblyPartSchema = z.strictObject({
  id,
  kind: z.enum(ASSEMBLY_KINDS),
  name: label,
  length_m: length,
  /** Set pressure of a regulator, absolute [Pa]; null for other parts or while unknown. */
  setPressure_Pa: z.number().min(0).max(1e8).nullable(),
  /** Arrow away from the cylinder. */
  arrowDownstream: z.boolean(),
});

/** What holds a pipe, at a place on it. */
export const supportSchema = z.strictObject({
  id,
  at: point3,
  /** Rigid holds every way; a guide lets the pipe slide along itself; hanger and sling only carry. */
  kind: z.enum(['rigid', 'guide', 'hanger', 'sling']),
  /** Thrust that it bears [N]; null: not yet known. */
  capacity_N: z.number().min(0).max(1e6).nullable(),
  /** Which way it braces the pipe against earthquakes: across it, along it, or both. */
  brace: z.enum(['none', 'lateral', 'longitudinal', 'four-way']),
});

export const WIRE_GAUGES = ['18', '16', '14', '12', '10'] as const;
export const CONDUITS = ['EMT', 'FMC'] as const;
export const CONDUIT_SIZES = ['3/8', '1/2', '3/4'] as const;
const current = z.number().min(0).max(1000);
const voltage = z.number().min(0).max(1000);

/** Something on the releasing circuit, at its place along the run. */
export const releaseDeviceSchema = z.strictObject({
  id,
  name: label,
  kind: z.enum(['solenoid', 'other']),
  /** One way along the wire from the panel [m]; null: not yet known. */
  distance_m: length.nullable(),
  /** null: the solenoid's of the unit profile, or not yet known. */
  current_A: current.nullable(),
  leastVoltage_V: voltage.nullable(),
  /** Both wires go through it, or a branch goes off to it. */
  wiring: z.enum(['unknown', 'in-line', 'tapped']),
});

/** The wires that release the agent and watch over it. */
export const releaseSchema = z.strictObject({
  /** At the panel at the end of its battery [V]. */
  supply_V: voltage,
  wireGauge: z.enum(WIRE_GAUGES),
  stranding: z.enum(['solid', 'stranded']),
  devices: z.array(releaseDeviceSchema).max(200),
  /** What the panel's releasing output gives [A]; null: not yet known. */
  panelCurrent_A: current.nullable(),
  /** How long it gives it [s]; null: not yet known. */
  panelPulse_s: z.number().min(0).max(3600).nullable(),
  conduit: z.strictObject({ kind: z.enum(CONDUITS), size: z.enum(CONDUIT_SIZES) }).nullable(),
  conductors: z.array(z.strictObject({ type: z.enum(['THHN', 'TFFN']), wireGauge: z.enum(WIRE_GAUGES), count: z.number().int().min(1).max(200) })).max(20),
  /** Stretches between two pull points, each with the bends in it [rad]. */
  pulls: z.array(z.strictObject({ name: label, bends_rad: z.array(z.number().min(0).max(Math.PI)).max(50) })).max(100),
  pressureSwitch: z
    .strictObject({ setPoint_Pa: z.number().min(0).max(1e8), isClosedWhenCharged: z.boolean() })
    .nullable(),
  /** Where the part stands that lets the panel watch over the pair. */
  endOfLine: z.enum(['unknown', 'none', 'before-last', 'after-last']),
  /** Taking the actuator off its valve shows at the panel; null: not yet known. */
  isActuatorWatched: known,
  panel: z.strictObject({ /** Listed for releasing. */ isListed: known, /** Listed together with this solenoid. */ isCompatible: known, listing: label }),
  battery: z.strictObject({ capacity_Ah: z.number().min(0).max(10_000), standby_A: current, alarm_A: current }).nullable(),
});

/** What the drawing cannot show of how the pipe is put up. */
export const installationSchema = z.strictObject({
  /** Whether the pipe is joined to the building's earth. */
  bonding: z.enum(['unknown', 'bonded', 'not-bonded']),
  /** Marking along the pipe and finish against corrosion, in words; blank: not yet said. */
  marking: label,
  finish: label,
});

export const networkSchema = z.strictObject({
  id,
  name: label,
  level: id,
  profile: id,
  /** Node where the pipe begins, at the outlet of the discharge assembly; null until drawn. */
  source: id.nullable(),
  cylinders: recordOf(cylinderSchema),
  /** Discharge assembly in flow order from the valve. */
  assembly: z.array(assemblyPartSchema).max(50),
  /** Axis of the manifold from its blind end to its outlet; null: none, or not yet placed. */
  manifold: z.strictObject({ from: point3, to: point3 }).nullable(),
  installation: installationSchema,
  nodes: recordOf(nodeSchema),
  pipes: recordOf(pipeSchema),
  nozzles: recordOf(nozzleSchema),
  supports: recordOf(supportSchema),
  /** null: not yet drawn up. */
  release: releaseSchema.nullable(),
});

const thingKey = z.string().max(400);

/** One dimension as it was measured on site. */
export const measurementSchema = z.strictObject({
  value_m: coordinate,
  by: label,
  at: label,
  instrument: label,
  /** Why it was built otherwise than approved, and who agreed; blank: nobody said. */
  reason: text,
  approvedBy: label,
  /** Assets with photographs of it. */
  photos: z.array(id).max(20),
});

export const LOG_KINDS = ['insulation', 'continuity', 'supervision', 'alarm', 'dead', 'live', 'panel-clear', 'pipe-test', 'puff', 'oxygen', 'pressure', 'note'] as const;

/** One reading or look of the wiring and arming log. */
export const logEntrySchema = z.strictObject({
  id,
  kind: z.enum(LOG_KINDS),
  /** Key of the thing that it is about; blank: the whole job. */
  about: thingKey,
  /** Insulation and continuity [Ω], supervision and alarm [A], dead and live [V], pipe test: pressure lost [Pa], oxygen [vol %], pressure [Pa absolute]; null where it is only looked at. */
  value: z.number().min(0).max(1e12).nullable(),
  /** How it turned out, as the reader says; null where the value tells it. */
  isGood: known,
  /** Of the cylinder, beside its pressure [K]. */
  temperature_K: z.number().min(150).max(400).nullable(),
  by: label,
  at: label,
  instrument: label,
  note: text,
});

export const VISIT_KINDS = ['pressure', 'hose', 'retest', 'enclosure'] as const;

/** Something of the service that was done. */
export const visitSchema = z.strictObject({ id, kind: z.enum(VISIT_KINDS), about: thingKey, /** Day, 2026-03-04. */ on: label, by: label, note: text });

const months = z.number().int().min(1).max(600).nullable();

/** All that comes back from the site. */
export const siteRecordSchema = z.strictObject({
  /** Measured dimension by printed id. */
  measurements: z.record(label, measurementSchema),
  /** Ticks of the hold points by id. */
  checks: z.record(label, z.strictObject({ done: z.boolean(), by: label, witness: label, at: label })),
  /** Oldest first. */
  log: z.array(logEntrySchema).max(10_000),
  service: z.strictObject({
    /** Months from one time to the next; null: as the manual says, not yet read. */
    pressure_months: months,
    hose_months: months,
    retest_months: months,
    enclosure_months: months,
    /** Oldest first. */
    visits: z.array(visitSchema).max(10_000),
  }),
});

/** A finding that somebody accepts as it is. It lapses when what the finding rests on becomes another. */
export const waiverSchema = z.strictObject({
  id,
  /** Key of the finding: rule, thing and name. */
  finding: z.string().max(600),
  rule: label,
  name: label,
  reason: text.min(1),
  by: label.min(1),
  date: label,
  /** Digest of what the finding said. */
  restsOn: z.string().max(200),
});

/** One set of sheets that was given out. The plan behind it is kept as it was. */
export const issuedSetSchema = z.strictObject({
  id,
  number: z.number().int().min(1).max(1000),
  mark: label,
  date: label,
  by: label,
  purpose: text,
  /** Digest of the plan as it was issued, and the asset that keeps it; null: it was not kept. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  plan: id.nullable(),
  /** Asset with the printed set; null: it was not kept. */
  sheets: id.nullable(),
  approved: z.strictObject({ by: label, date: label, reference: label }).nullable(),
});

/** What was on the sheets when they were last issued. */
export const issueSchema = z.strictObject({
  mark: label,
  date: label,
  /** Digest of each thing by its key. */
  things: z.record(z.string().max(400), z.string().max(64)),
  /** Keys of what had changed since the issue before: the sheets cloud it. */
  changed: z.array(z.string().max(400)).max(200_000),
});

/** The whole plan document. */
export const planSchema = z.strictObject({
  format: z.literal('nozzlewright-plan'),
  version: z.literal(PLAN_VERSION),
  info: infoSchema,
  settings: settingsSchema,
  basis: basisSchema,
  /** Serial of the next id; ids are never used twice in a plan. */
  nextSerial: z.number().int().min(1).max(1e9),
  /** File name inside `assets/` and digest of each imported file. */
  assets: recordOf(z.strictObject({ id, name: label, file: label, sha256: z.string().regex(/^[0-9a-f]{64}$/) })),
  levels: recordOf(levelSchema),
  networks: recordOf(networkSchema),
  profiles: recordOf(unitProfileSchema),
  waivers: recordOf(waiverSchema),
  /** null: never issued. */
  lastIssue: issueSchema.nullable(),
  /** Oldest first. */
  issuedSets: z.array(issuedSetSchema).max(200),
  siteRecord: siteRecordSchema,
});
