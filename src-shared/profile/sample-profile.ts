import type { PipeSize } from './pipe-table.ts';
import type { MadeFitting, UnitProfile } from './unit-profile.ts';

const sample = (value: number) => ({ value, source: 'sample, invented' });
const degrees = (angle_deg: number) => sample((angle_deg * Math.PI) / 180);
const inches = (length_in: number) => sample(length_in * 0.0254);
const practice = (length_in: number) => ({ value: length_in * 0.0254, source: 'common practice' });

const legs = (...each: readonly (readonly [size: PipeSize, reach_in: number])[]): MadeFitting['legs'] => each.map(([size, reach_in]) => ({ size, reach_m: reach_in * 0.0254 }));
const made = (kind: MadeFitting['kind'], weight_kg: number, ...each: readonly (readonly [size: PipeSize, reach_in: number])[]): MadeFitting => ({ kind, legs: legs(...each), weight_kg, source: 'sample, invented' });

/** Lengths of reducing fittings and unions, invented like the unit itself. */
const SAMPLE_FITTINGS: MadeFitting[] = [
  made('tee', 1.5, ['1-1/4', 1.69], ['1-1/4', 1.69], ['1', 1.81]),
  made('tee', 1.3, ['1-1/4', 1.56], ['1-1/4', 1.56], ['3/4', 1.69]),
  made('tee', 1.4, ['1-1/4', 1.69], ['1', 1.69], ['1', 1.81]),
  made('tee', 0.9, ['1', 1.5], ['1', 1.5], ['3/4', 1.56]),
  made('tee', 0.8, ['1', 1.5], ['3/4', 1.5], ['3/4', 1.56]),
  made('tee', 0.8, ['3/4', 1.56], ['3/4', 1.56], ['1', 1.5]),
  made('tee', 0.5, ['3/4', 1.31], ['3/4', 1.31], ['1/2', 1.38]),
  made('elbow-90', 0.8, ['1-1/4', 1.75], ['1', 1.81]),
  made('elbow-90', 0.5, ['1', 1.5], ['3/4', 1.56]),
  made('elbow-90', 0.3, ['3/4', 1.31], ['1/2', 1.38]),
  made('reducer', 0.5, ['1-1/4', 1.2], ['1', 1.2]),
  made('reducer', 0.4, ['1', 1.1], ['3/4', 1.1]),
  made('reducer', 0.3, ['3/4', 1], ['1/2', 1]),
  made('union', 0.5, ['3/4', 1.2]),
  made('union', 0.8, ['1', 1.35]),
  made('union', 1.2, ['1-1/4', 1.5]),
];

/** An invented unit to try the program with. No real unit has these figures; sheets carry a sample stamp. */
export const SAMPLE_PROFILE: UnitProfile = {
  id: 'sample-80',
  name: 'Sample 80 L unit (invented)',
  isSample: true,
  note: 'Invented for trying the program. Enter the figures of your unit’s manual before anything is built.',
  limits: {
    cylinderVolume_m3: sample(0.08),
    fillPressure_Pa: sample(30_101_325),
    agentMass_kg: sample(24.7),
    filledMass_kg: sample(110),
    cylinderDiameter_m: inches(10.5),
    outletHeight_m: inches(66),
    storageLeast_K: sample(253.15),
    storageGreatest_K: sample(323.15),
    hoseReach_m: sample(0.75),
    hoseBendRadius_m: sample(0.15),
    cylindersPerNetwork: sample(6),
    regulatorPressure_Pa: sample(6_101_325),
    pathLength_m: sample(30),
    totalPipeLength_m: sample(60),
    elbowsPerPath: sample(9),
    teesPerPath: sample(4),
    bullTeesPerPath: sample(1),
    teeSplitLeast: sample(0.05),
    pathImbalance: sample(0.8),
    pipeVolume_m3: sample(0.08),
    peakFlow_kg_s: sample(0.35),
    nozzlesPerUnit: sample(2),
    nozzleToWall_m: practice(10),
    nozzleToCeiling_m: practice(12),
    nozzleTilt_rad: degrees(2),
    cornerZone_m: inches(60),
    cornerAngle_rad: degrees(20),
    nearWallZone_m: inches(36),
    nearWallAngle_rad: degrees(10),
    freeJet_m: practice(36),
    nozzleReach_m: sample(4.95),
    nozzleArea_m2: sample(49),
    nozzleCoefficient: sample(0.85),
    nozzleSpacing_m: sample(1.5),
    // Half the angle of a round free jet, which hardly hangs on what blows: common practice, memory.
    jetSpread_rad: { value: (12 * Math.PI) / 180, source: 'common practice' },
    voidDepth_m: sample(0.2),
    voidFreeJet_m: sample(0.3),
    soundPower_dB: sample(118),
    tierHeight_m: sample(3.6),
    pipeClearance_m: practice(1),
    railHeight_m: inches(48),
    frontDepth_m: inches(30),
    removalWidth_m: practice(24),
    solenoidVoltage_V: sample(24),
    solenoidCurrent_A: sample(1.5),
    solenoidLeastVoltage_V: sample(18),
    releasePulse_s: sample(0.5),
    lowPressureSwitch_Pa: sample(25_101_325),
  },
  // The code is the bore of one hole of the same area, in hundredths of a millimetre.
  orifices: Array.from({ length: 201 }, (_, i) => 100 + 5 * i).map((bore) => ({ code: `S${bore}`, area_m2: (Math.PI / 4) * (bore * 1e-5) ** 2 })),
  footprint: { shape: 'rectangle', length_m: 7, width_m: 7, source: 'sample, invented' },
  pipeSizes: ['1/2', '3/4', '1', '1-1/4', '1-1/2', '2'],
  schedule: '40',
  fittingClass: '300',
  madeFittings: SAMPLE_FITTINGS,
  assemblyOrder: ['hose', 'check-valve', 'manifold', 'regulator'],
  teeAttitudes: ['side', 'up', 'down', 'bull'],
};
