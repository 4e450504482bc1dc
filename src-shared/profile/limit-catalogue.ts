/** What a limit counts or measures; decides the unit its field shows. */
export type LimitKind = 'length' | 'volume' | 'mass' | 'pressure' | 'angle' | 'area' | 'count' | 'massFlow' | 'voltage' | 'current' | 'time' | 'factor' | 'temperature' | 'sound';

export interface LimitInfo {
  /** Heading of the form's part. */
  readonly part: 'Cylinder' | 'Pipe' | 'Nozzle' | 'Mounting' | 'Release';
  readonly label: string;
  readonly kind: LimitKind;
  /** What it means to the person who reads it out of the manual. */
  readonly help: string;
}

const limit = (part: LimitInfo['part'], label: string, kind: LimitKind, help: string): LimitInfo => ({ part, label, kind, help });

/**
 * Every figure that the manual of a pre-engineered unit gives. The key carries the SI unit of its value;
 * a figure that the manual does not give stays blank, and what needs it is then "not checked".
 */
export const LIMIT_CATALOGUE = {
  cylinderVolume_m3: limit('Cylinder', 'Water volume', 'volume', 'Inside volume of one cylinder.'),
  fillPressure_Pa: limit('Cylinder', 'Fill pressure (absolute)', 'pressure', 'Pressure of a full cylinder at the fill temperature.'),
  agentMass_kg: limit('Cylinder', 'Agent mass', 'mass', 'Nitrogen in one full cylinder.'),
  filledMass_kg: limit('Cylinder', 'Filled mass', 'mass', 'One full cylinder with valve, for wall and floor loads.'),
  cylinderDiameter_m: limit('Cylinder', 'Diameter', 'length', 'Outside diameter of the cylinder.'),
  outletHeight_m: limit('Cylinder', 'Valve outlet height', 'length', 'Height of the valve outlet above the floor the cylinder stands on.'),
  storageLeast_K: limit('Cylinder', 'Coldest place of storage', 'temperature', 'Lowest temperature at which the cylinder may stand.'),
  storageGreatest_K: limit('Cylinder', 'Hottest place of storage', 'temperature', 'Highest temperature at which the cylinder may stand.'),
  hoseReach_m: limit('Cylinder', 'Reach of the discharge hose', 'length', 'Greatest straight distance from the valve outlet to the end of the hose.'),
  hoseBendRadius_m: limit('Cylinder', 'Least bend radius of the hose', 'length', 'To the middle line of the hose.'),
  cylindersPerNetwork: limit('Cylinder', 'Most cylinders on one network', 'count', 'Cylinders that may feed one pipe network.'),
  regulatorPressure_Pa: limit('Pipe', 'Regulator set pressure (absolute)', 'pressure', 'Highest pressure downstream of the regulator.'),
  pathLength_m: limit('Pipe', 'Longest path', 'length', 'Developed pipe length from cylinder to any nozzle, drops included.'),
  totalPipeLength_m: limit('Pipe', 'Total pipe length', 'length', 'All pipe of one network together.'),
  elbowsPerPath: limit('Pipe', 'Most elbows on a path', 'count', 'Elbows between cylinder and any nozzle.'),
  teesPerPath: limit('Pipe', 'Most tees on a path', 'count', 'Tees between cylinder and any nozzle.'),
  bullTeesPerPath: limit('Pipe', 'Most bull-head tees on a path', 'count', 'Tees fed through their branch, which part the agent both ways along their run; 0 where the manual allows none.'),
  teeSplitLeast: limit('Pipe', 'Least share of a tee’s lesser leg', 'factor', 'Of the flow that comes to a tee, what its lesser leg must get at least, from 0 to 0.5.'),
  pathImbalance: limit('Pipe', 'Greatest difference between paths', 'factor', 'Longest path less the shortest, as a share of the longest, from 0 to 1.'),
  pipeVolume_m3: limit('Pipe', 'Pipe volume', 'volume', 'Inside volume of all pipe of one network.'),
  peakFlow_kg_s: limit('Pipe', 'Peak flow of one cylinder', 'massFlow', 'Highest mass flow of one cylinder during discharge.'),
  nozzlesPerUnit: limit('Nozzle', 'Most nozzles per cylinder', 'count', 'Nozzles that one cylinder of the network may feed.'),
  nozzleToWall_m: limit('Nozzle', 'Least distance to a wall', 'length', 'Nozzle axis to finished wall face or full-height obstruction.'),
  nozzleToCeiling_m: limit('Nozzle', 'Greatest drop below the ceiling', 'length', 'Local ceiling down to the orifice.'),
  nozzleTilt_rad: limit('Nozzle', 'Greatest tilt', 'angle', 'Nozzle axis against the vertical.'),
  cornerZone_m: limit('Nozzle', 'Corner zone', 'length', 'A nozzle this near to both walls of a corner stands in the corner.'),
  cornerAngle_rad: limit('Nozzle', 'Least angle off the corner', 'angle', 'Hole direction against the direction to the corner.'),
  nearWallZone_m: limit('Nozzle', 'Near-wall zone', 'length', 'A nozzle this near to one wall blows along it.'),
  nearWallAngle_rad: limit('Nozzle', 'Parallel tolerance near a wall', 'angle', 'Hole axis against the near wall.'),
  freeJet_m: limit('Nozzle', 'Least free jet', 'length', 'Hole to the first thing its jet meets.'),
  nozzleReach_m: limit('Nozzle', 'Farthest point served', 'length', 'Farthest floor point that one nozzle may serve.'),
  nozzleArea_m2: limit('Nozzle', 'Largest area of one nozzle', 'area', 'Floor that one nozzle may serve.'),
  nozzleCoefficient: limit('Nozzle', 'Discharge coefficient', 'factor', 'What the orifice passes against an ideal one, from 0 to 1.'),
  nozzleSpacing_m: limit('Nozzle', 'Least distance between nozzles', 'length', 'Nozzles of one space whose jets could meet.'),
  jetSpread_rad: limit('Nozzle', 'Spread of a jet', 'angle', 'Half the angle of the cone in which a hole blows.'),
  voidDepth_m: limit('Nozzle', 'Least depth of a void', 'length', 'Clear depth that a void nozzle needs.'),
  voidFreeJet_m: limit('Nozzle', 'Least free jet in a void', 'length', 'Hole of a void nozzle to the first tray, pedestal or wall.'),
  soundPower_dB: limit('Nozzle', 'Sound power of one nozzle', 'sound', 'While it discharges, over 1 pW; a silencing nozzle has less.'),
  tierHeight_m: limit('Nozzle', 'Greatest ceiling height for one tier', 'length', 'Above it a second tier of nozzles is needed.'),
  pipeClearance_m: limit('Pipe', 'Clearance around pipe', 'length', 'Outside of pipe to any solid or service.'),
  railHeight_m: limit('Mounting', 'Rail height', 'length', 'Clamp rail above the floor.'),
  frontDepth_m: limit('Mounting', 'Clear depth in front', 'length', 'Free floor in front of a cylinder, for work on its valve and for taking it out; common practice is 36 in.'),
  removalWidth_m: limit('Mounting', 'Width to take a cylinder out', 'length', 'Free width on the way from a cylinder to a door, for the cylinder on its trolley; common practice is 24 in.'),
  solenoidVoltage_V: limit('Release', 'Solenoid voltage', 'voltage', 'Rated voltage of the releasing solenoid.'),
  solenoidCurrent_A: limit('Release', 'Solenoid current', 'current', 'Current of the releasing solenoid.'),
  solenoidLeastVoltage_V: limit('Release', 'Solenoid least voltage', 'voltage', 'The solenoid must still pull in at this voltage.'),
  releasePulse_s: limit('Release', 'Release pulse', 'time', 'How long the solenoid needs its current.'),
  lowPressureSwitch_Pa: limit('Release', 'Low-pressure switch (absolute)', 'pressure', 'Falling pressure at which the supervising switch turns over.'),
} as const satisfies Record<string, LimitInfo>;

/** Name of one figure of the manual. */
export type LimitKey = keyof typeof LIMIT_CATALOGUE;
export const LIMIT_KEYS = Object.keys(LIMIT_CATALOGUE) as LimitKey[];
