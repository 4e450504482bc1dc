import { c01StorageTemperature } from './cylinder/c01-storage-temperature.ts';
import { c02WallLoad } from './cylinder/c02-wall-load.ts';
import { c03Anchors } from './cylinder/c03-anchors.ts';
import { c04RailHeight } from './cylinder/c04-rail-height.ts';
import { c05FrontDepth } from './cylinder/c05-front-depth.ts';
import { c06RemovalPath } from './cylinder/c06-removal-path.ts';
import { c07DoorSwing } from './cylinder/c07-door-swing.ts';
import { c08GaugeVisible } from './cylinder/c08-gauge-visible.ts';
import { c09OutletHeight } from './cylinder/c09-outlet-height.ts';
import { c10Exposure } from './cylinder/c10-exposure.ts';
import { c11PanelSpace } from './cylinder/c11-panel-space.ts';
import { c12CountAndFill } from './cylinder/c12-count-and-fill.ts';
import { c13TwoLevels } from './cylinder/c13-two-levels.ts';
import { d01UnderlayScale } from './document/d01-underlay-scale.ts';
import { d02ScaleAndText } from './document/d02-scale-and-text.ts';
import { d03TitleBlock } from './document/d03-title-block.ts';
import { d04DatumDimensions } from './document/d04-datum-dimensions.ts';
import { d05ProfileComplete } from './document/d05-profile-complete.ts';
import { d06OneCount } from './document/d06-one-count.ts';
import { d07ChangesClouded } from './document/d07-changes-clouded.ts';
import { d08Rounding } from './document/d08-rounding.ts';
import { d09FieldRecord } from './document/d09-field-record.ts';
import { e01NetVolume } from './enclosure/e01-net-volume.ts';
import { e02AgentQuantity } from './enclosure/e02-agent-quantity.ts';
import { e03People } from './enclosure/e03-people.ts';
import { e04FixedFill } from './enclosure/e04-fixed-fill.ts';
import { e05DischargeTime } from './enclosure/e05-discharge-time.ts';
import { e06HoldTime } from './enclosure/e06-hold-time.ts';
import { e07LeakageArea } from './enclosure/e07-leakage-area.ts';
import { e08ReliefVent } from './enclosure/e08-relief-vent.ts';
import { e09WallStrength } from './enclosure/e09-wall-strength.ts';
import { e10VentPath } from './enclosure/e10-vent-path.ts';
import { e11VentClearOfJet } from './enclosure/e11-vent-clear-of-jet.ts';
import { e12OpeningsClose } from './enclosure/e12-openings-close.ts';
import { e13DuctsShut } from './enclosure/e13-ducts-shut.ts';
import { e14WallsToSlab } from './enclosure/e14-walls-to-slab.ts';
import { e15ConnectedSpace } from './enclosure/e15-connected-space.ts';
import { e16Extract } from './enclosure/e16-extract.ts';
import { n01WallClearance } from './nozzle/n01-wall-clearance.ts';
import { n02CeilingDrop } from './nozzle/n02-ceiling-drop.ts';
import { n03CeilingKnown } from './nozzle/n03-ceiling-known.ts';
import { n04FacesDown } from './nozzle/n04-faces-down.ts';
import { n05CornerShot } from './nozzle/n05-corner-shot.ts';
import { n06NearWallShot } from './nozzle/n06-near-wall-shot.ts';
import { n07FreeJet } from './nozzle/n07-free-jet.ts';
import { n08JetAtPeople } from './nozzle/n08-jet-at-people.ts';
import { n09CoverageGap } from './nozzle/n09-coverage-gap.ts';
import { n10NozzleReach } from './nozzle/n10-nozzle-reach.ts';
import { n11HeightTier } from './nozzle/n11-height-tier.ts';
import { n12NozzleSpacing } from './nozzle/n12-nozzle-spacing.ts';
import { n13PartialPartition } from './nozzle/n13-partial-partition.ts';
import { n14BeamPocket } from './nozzle/n14-beam-pocket.ts';
import { n15AboveEquipment } from './nozzle/n15-above-equipment.ts';
import { n16FloorVoid } from './nozzle/n16-floor-void.ts';
import { n17CeilingVoid } from './nozzle/n17-ceiling-void.ts';
import { n18VoidNozzle } from './nozzle/n18-void-nozzle.ts';
import { n19LiveParts } from './nozzle/n19-live-parts.ts';
import { n20OrificeCode } from './nozzle/n20-orifice-code.ts';
import { n21FlowShare } from './nozzle/n21-flow-share.ts';
import { n22NozzlesPerUnit } from './nozzle/n22-nozzles-per-unit.ts';
import { n23TilesClipped } from './nozzle/n23-tiles-clipped.ts';
import { n24DriveNoise } from './nozzle/n24-drive-noise.ts';
import { p01Network } from './pipe/p01-network.ts';
import { p02PathLength } from './pipe/p02-path-length.ts';
import { p03TotalLength } from './pipe/p03-total-length.ts';
import { p04Elbows } from './pipe/p04-elbows.ts';
import { p05Tees } from './pipe/p05-tees.ts';
import { p06TeeSplit } from './pipe/p06-tee-split.ts';
import { p07BullTees } from './pipe/p07-bull-tees.ts';
import { p08StraightRun } from './pipe/p08-straight-run.ts';
import { p09PipeSize } from './pipe/p09-pipe-size.ts';
import { p10PipeVolume } from './pipe/p10-pipe-volume.ts';
import { p11Imbalance } from './pipe/p11-imbalance.ts';
import { p12BracedDrop } from './pipe/p12-braced-drop.ts';
import { p13PipeRating } from './pipe/p13-pipe-rating.ts';
import { p14FittingRating } from './pipe/p14-fitting-rating.ts';
import { p15StreetElbow } from './pipe/p15-street-elbow.ts';
import { p16ThreadRoom } from './pipe/p16-thread-room.ts';
import { p17MadeUpAngle } from './pipe/p17-made-up-angle.ts';
import { p18SupportSpan } from './pipe/p18-support-span.ts';
import { p19NozzleSupport } from './pipe/p19-nozzle-support.ts';
import { p20TurnSupport } from './pipe/p20-turn-support.ts';
import { p21RigidAtThrust } from './pipe/p21-rigid-at-thrust.ts';
import { p22NozzleThrust } from './pipe/p22-nozzle-thrust.ts';
import { p23SeismicBracing } from './pipe/p23-seismic-bracing.ts';
import { p24LowPoint } from './pipe/p24-low-point.ts';
import { p25DirtTrap } from './pipe/p25-dirt-trap.ts';
import { p26Bonding } from './pipe/p26-bonding.ts';
import { p27Clash } from './pipe/p27-clash.ts';
import { p28WrenchRoom } from './pipe/p28-wrench-room.ts';
import { p29WallCrossing } from './pipe/p29-wall-crossing.ts';
import { p30Headroom } from './pipe/p30-headroom.ts';
import { p31TrappedRelief } from './pipe/p31-trapped-relief.ts';
import { p32Hose } from './pipe/p32-hose.ts';
import { p33AssemblyOrder } from './pipe/p33-assembly-order.ts';
import { p34MarkingAndFinish } from './pipe/p34-marking-and-finish.ts';
import { l01DeviceVoltage } from './release/l01-device-voltage.ts';
import { l02ReleaseCurrent } from './release/l02-release-current.ts';
import { l03ConduitFill } from './release/l03-conduit-fill.ts';
import { l04ConduitBends } from './release/l04-conduit-bends.ts';
import { l05Supervision } from './release/l05-supervision.ts';
import { l06PressureSwitch } from './release/l06-pressure-switch.ts';
import { l07ActuatorWatched } from './release/l07-actuator-watched.ts';
import { l08PanelListing } from './release/l08-panel-listing.ts';
import { l09Battery } from './release/l09-battery.ts';
import { l10TwoDetectors } from './release/l10-two-detectors.ts';
import type { Rule } from './rule.ts';
import { s01EgressTime } from './safety/s01-egress-time.ts';
import { s02DischargeDelay } from './safety/s02-discharge-delay.ts';
import { s03AlarmReach } from './safety/s03-alarm-reach.ts';
import { s04Signs } from './safety/s04-signs.ts';
import { s05ManualRelease } from './safety/s05-manual-release.ts';
import { s06Abort } from './safety/s06-abort.ts';
import { s07Disconnect } from './safety/s07-disconnect.ts';
import { s08DoorButton } from './safety/s08-door-button.ts';
import { s09AdjacentSpaces } from './safety/s09-adjacent-spaces.ts';
import { s10ReEntry } from './safety/s10-re-entry.ts';

const JUDGING: readonly Rule[] = [
  n01WallClearance,
  n02CeilingDrop,
  n03CeilingKnown,
  n04FacesDown,
  n05CornerShot,
  n06NearWallShot,
  n07FreeJet,
  n08JetAtPeople,
  n09CoverageGap,
  n10NozzleReach,
  n11HeightTier,
  n12NozzleSpacing,
  n13PartialPartition,
  n14BeamPocket,
  n15AboveEquipment,
  n16FloorVoid,
  n17CeilingVoid,
  n18VoidNozzle,
  n19LiveParts,
  n20OrificeCode,
  n21FlowShare,
  n22NozzlesPerUnit,
  n23TilesClipped,
  n24DriveNoise,
  p01Network,
  p02PathLength,
  p03TotalLength,
  p04Elbows,
  p05Tees,
  p06TeeSplit,
  p07BullTees,
  p08StraightRun,
  p09PipeSize,
  p10PipeVolume,
  p11Imbalance,
  p12BracedDrop,
  p13PipeRating,
  p14FittingRating,
  p15StreetElbow,
  p16ThreadRoom,
  p17MadeUpAngle,
  p18SupportSpan,
  p19NozzleSupport,
  p20TurnSupport,
  p21RigidAtThrust,
  p22NozzleThrust,
  p23SeismicBracing,
  p24LowPoint,
  p25DirtTrap,
  p26Bonding,
  p27Clash,
  p28WrenchRoom,
  p29WallCrossing,
  p30Headroom,
  p31TrappedRelief,
  p32Hose,
  p33AssemblyOrder,
  p34MarkingAndFinish,
  c01StorageTemperature,
  c02WallLoad,
  c03Anchors,
  c04RailHeight,
  c05FrontDepth,
  c06RemovalPath,
  c07DoorSwing,
  c08GaugeVisible,
  c09OutletHeight,
  c10Exposure,
  c11PanelSpace,
  c12CountAndFill,
  c13TwoLevels,
  e01NetVolume,
  e02AgentQuantity,
  e03People,
  e04FixedFill,
  e05DischargeTime,
  e06HoldTime,
  e07LeakageArea,
  e08ReliefVent,
  e09WallStrength,
  e10VentPath,
  e11VentClearOfJet,
  e12OpeningsClose,
  e13DuctsShut,
  e14WallsToSlab,
  e15ConnectedSpace,
  e16Extract,
  s01EgressTime,
  s02DischargeDelay,
  s03AlarmReach,
  s04Signs,
  s05ManualRelease,
  s06Abort,
  s07Disconnect,
  s08DoorButton,
  s09AdjacentSpaces,
  s10ReEntry,
  l01DeviceVoltage,
  l02ReleaseCurrent,
  l03ConduitFill,
  l04ConduitBends,
  l05Supervision,
  l06PressureSwitch,
  l07ActuatorWatched,
  l08PanelListing,
  l09Battery,
  l10TwoDetectors,
  d01UnderlayScale,
  d02ScaleAndText,
  d03TitleBlock,
  d04DatumDimensions,
  d06OneCount,
  d07ChangesClouded,
  d08Rounding,
  d09FieldRecord,
];

/** Every rule of the catalogue that the program knows, in catalogue order but for D5, which asks what the others need. */
export const RULES: readonly Rule[] = [...JUDGING, d05ProfileComplete(JUDGING)];
