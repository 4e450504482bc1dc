import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Enclosure } from '../../model/plan.ts';
import type { CylinderProcess } from '../discharge/discharge.ts';
import type { Exposure } from '../design/design.ts';

/** Choices of the basis of design in words, as calculation lines name the method that they follow. */
export const DESIGN_SET_WORDS: Readonly<Record<BasisOfDesign['designSet'], string>> = {
  'en-15004-2008': 'EN 15004:2008 and ISO 14520:2006',
  'iso-14520-2015': 'ISO 14520:2015',
  'nfpa-2001-2012': 'NFPA 2001 of 2012 to 2018',
  'nfpa-2001-2008': 'NFPA 2001 up to 2008',
};
export const CONSTANTS_WORDS: Readonly<Record<BasisOfDesign['constants'], string>> = { iso: 'constants of ISO 14520 and EN 15004', nfpa: 'constants of NFPA 2001' };
export const LOGARITHM_WORDS: Readonly<Record<BasisOfDesign['logarithm'], string>> = { exact: 'natural logarithm', '2.303': '2.303 times the common logarithm' };
export const ALTITUDE_WORDS: Readonly<Record<BasisOfDesign['altitudeMethod'], string>> = {
  iso: 'altitude by the ISO 14520-1 table',
  nfpa: 'altitude by the NFPA 2001 table',
  isa: 'altitude by the standard atmosphere',
};
export const JUDGED_BY_WORDS: Readonly<Record<BasisOfDesign['exposureBy'], string>> = {
  stricter: 'the stricter of concentration and oxygen',
  concentration: 'the concentration',
  oxygen: 'the oxygen, as at sea level',
};
export const EXPOSURE_WORDS: Readonly<Record<Exposure, string>> = { '5-min': 'at most 5 min', '3-min': 'at most 3 min', '30-s': 'at most 30 s', none: 'nobody may be in it' };
export const VENT_FLOW_WORDS: Readonly<Record<BasisOfDesign['ventFlow'], string>> = { manual: "peak flow of the unit's manual", calculated: 'peak flow of the discharge worked out here' };
export const VENT_TEMPERATURE_WORDS: Readonly<Record<BasisOfDesign['ventTemperature'], string>> = { '20C': 'agent fills the room at 20 °C', hottest: 'agent fills the room at its highest temperature' };
export const HOLD_MODEL_WORDS: Readonly<Record<BasisOfDesign['holdModel'], string>> = { sharp: 'sharp interface', wide: 'wide interface', mixing: 'gas kept mixed' };
export const PROCESS_WORDS: Readonly<Record<CylinderProcess, string>> = {
  'wall-heat': 'gas in the cylinder takes heat from the steel',
  isothermal: 'gas in the cylinder keeps its temperature',
  adiabatic: 'gas in the cylinder takes no heat',
};
export const LOSS_SET_WORDS: Readonly<Record<BasisOfDesign['lossSet'], string>> = { 'tp-410': 'fitting losses as in TP-410', 'nfpa-12': 'fitting losses by the NFPA 12 equivalent lengths', ashrae: 'fitting losses by ASHRAE' };
export const STRESS_SET_WORDS: Readonly<Record<BasisOfDesign['stressSet'], string>> = { older: 'allowable stresses before 1999', newer: 'allowable stresses from 1999 on' };
export const SPECIFICATION_WORDS: Readonly<Record<BasisOfDesign['pipeSpecification'], string>> = {
  'A106-C': 'ASTM A106 grade C, seamless',
  'A106-B': 'ASTM A106 grade B, seamless',
  'A53-B-seamless': 'ASTM A53 grade B, seamless',
  'A53-A-seamless': 'ASTM A53 grade A, seamless',
  'A53-B-ERW': 'ASTM A53 grade B, electric resistance welded',
  'A53-A-ERW': 'ASTM A53 grade A, electric resistance welded',
  'A53-F': 'ASTM A53 type F, furnace butt welded',
};
export const SUPPORT_TABLE_WORDS: Readonly<Record<BasisOfDesign['supportTable'], string>> = { 'b31.1': 'spans of ASME B31.1', 'mss-sp-69': 'spans of MSS SP-69', 'iso-14520': 'spans of ISO 14520-1' };
export const LAST_SUPPORT_WORDS: Readonly<Record<BasisOfDesign['lastSupport'], string>> = { iso: 'last support by ISO 14520-1', us: 'last support 12 in from the nozzle' };

export const SEISMIC_WORDS: Readonly<Record<BasisOfDesign['seismic'], string>> = { unknown: 'not yet known', 'not-required': 'no bracing required', required: 'bracing required' };
export const LOCK_OUT_WORDS: Readonly<Record<BasisOfDesign['lockOutValve'], string>> = { unknown: 'not yet known', 'not-required': 'no lock-out valve required', required: 'lock-out valve required' };
export const EXTRACT_WORDS: Readonly<Record<BasisOfDesign['extract'], string>> = { unknown: 'not yet known', 'not-required': 'no extract required', required: 'extract required' };

/** What the enclosure is, in words. */
export const HAZARD_WORDS: Readonly<Record<Enclosure['hazardClass'], string>> = {
  unknown: 'not known',
  'A-surface': 'class A, surface fire',
  'A-higher': 'class A, higher hazard',
  B: 'class B',
  C: 'class C',
};
export const OCCUPANCY_WORDS: Readonly<Record<Enclosure['occupancy'], string>> = {
  unknown: 'not known',
  'normally-occupied': 'normally occupied',
  'normally-unoccupied': 'normally unoccupied',
  unoccupiable: 'cannot be occupied',
};
