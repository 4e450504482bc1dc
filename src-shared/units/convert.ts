/**
 * Conversions between base SI and the units people read and type. Exact factors are those of
 * NIST SP 811 (2008), appendix B: inch 0.0254 m, pound 0.453 592 37 kg, standard gravity 9.806 65 m/s²,
 * standard atmosphere 101 325 Pa, 0 °C = 273.15 K.
 */

/** One inch [m], exact. */
export const INCH_m = 0.0254;
/** One foot [m], exact. */
export const FOOT_m = 0.3048;
/** One avoirdupois pound [kg], exact. */
export const POUND_kg = 0.45359237;
/** Standard gravity [m/s²], exact. */
export const STANDARD_GRAVITY_m_s2 = 9.80665;
/** Standard atmosphere [Pa], exact: what a gauge at sea level reads from. */
export const ATMOSPHERE_Pa = 101_325;
/** One bar [Pa], exact. */
export const BAR_Pa = 100_000;
/** One pound-force per square inch [Pa]. */
export const PSI_Pa = (POUND_kg * STANDARD_GRAVITY_m_s2) / INCH_m ** 2;
/** One pound-force per square foot [Pa]. */
export const PSF_Pa = (POUND_kg * STANDARD_GRAVITY_m_s2) / FOOT_m ** 2;
/** 0 °C [K], exact. */
export const ICE_POINT_K = 273.15;

/**
 * Inches as metres.
 * @example inches_m(10) // 0.254
 */
export const inches_m = (length_in: number): number => length_in * INCH_m;
/** Metres as inches. */
export const toInches = (length_m: number): number => length_m / INCH_m;
/** Feet as metres. */
export const feet_m = (length_ft: number): number => length_ft * FOOT_m;
/** Metres as feet. */
export const toFeet = (length_m: number): number => length_m / FOOT_m;
/** Millimetres as metres. */
export const millimetres_m = (length_mm: number): number => length_mm / 1000;
/** Metres as millimetres. */
export const toMillimetres = (length_m: number): number => length_m * 1000;

/** Degrees as radians. */
export const degrees_rad = (angle_deg: number): number => (angle_deg * Math.PI) / 180;
/** Radians as degrees. */
export const toDegrees = (angle_rad: number): number => (angle_rad * 180) / Math.PI;

/** Bar as pascals; absolute stays absolute, gauge stays gauge. */
export const bar_Pa = (pressure_bar: number): number => pressure_bar * BAR_Pa;
/** Pascals as bar. */
export const toBar = (pressure_Pa: number): number => pressure_Pa / BAR_Pa;
/**
 * Pounds-force per square inch as pascals.
 * @example psi_Pa(1) // 6894.757
 */
export const psi_Pa = (pressure_psi: number): number => pressure_psi * PSI_Pa;
/** Pascals as pounds-force per square inch. */
export const toPsi = (pressure_Pa: number): number => pressure_Pa / PSI_Pa;
/**
 * Pounds-force per square foot as pascals.
 * @example psf_Pa(1) // 47.880
 */
export const psf_Pa = (pressure_psf: number): number => pressure_psf * PSF_Pa;
/** Pascals as pounds-force per square foot. */
export const toPsf = (pressure_Pa: number): number => pressure_Pa / PSF_Pa;
/** What a gauge at sea level shows for an absolute pressure [Pa]. */
export const gaugeOf_Pa = (absolute_Pa: number): number => absolute_Pa - ATMOSPHERE_Pa;
/** Absolute pressure of a gauge reading at sea level [Pa]. */
export const absoluteOf_Pa = (gauge_Pa: number): number => gauge_Pa + ATMOSPHERE_Pa;

/** Degrees Celsius as kelvins. */
export const celsius_K = (temperature_C: number): number => temperature_C + ICE_POINT_K;
/** Kelvins as degrees Celsius. */
export const toCelsius = (temperature_K: number): number => temperature_K - ICE_POINT_K;
/**
 * Degrees Fahrenheit as kelvins.
 * @example fahrenheit_K(70) // 294.261
 */
export const fahrenheit_K = (temperature_F: number): number => (temperature_F + 459.67) / 1.8;
/** Kelvins as degrees Fahrenheit. */
export const toFahrenheit = (temperature_K: number): number => temperature_K * 1.8 - 459.67;

/** Square feet as square metres. */
export const squareFeet_m2 = (area_ft2: number): number => area_ft2 * FOOT_m ** 2;
/** Square metres as square feet. */
export const toSquareFeet = (area_m2: number): number => area_m2 / FOOT_m ** 2;
/** Square inches as square metres. */
export const squareInches_m2 = (area_in2: number): number => area_in2 * INCH_m ** 2;
/** Square metres as square inches. */
export const toSquareInches = (area_m2: number): number => area_m2 / INCH_m ** 2;
/**
 * Cubic feet as cubic metres.
 * @example cubicFeet_m3(1) // 0.0283168
 */
export const cubicFeet_m3 = (volume_ft3: number): number => volume_ft3 * FOOT_m ** 3;
/** Cubic metres as cubic feet. */
export const toCubicFeet = (volume_m3: number): number => volume_m3 / FOOT_m ** 3;
/** Litres as cubic metres. */
export const litres_m3 = (volume_L: number): number => volume_L / 1000;
/** Cubic metres as litres. */
export const toLitres = (volume_m3: number): number => volume_m3 * 1000;

/** Pounds as kilograms. */
export const pounds_kg = (mass_lb: number): number => mass_lb * POUND_kg;
/** Kilograms as pounds. */
export const toPounds = (mass_kg: number): number => mass_kg / POUND_kg;
