/** Standard gravity, m/s². Defined by the 3rd General Conference on Weights and Measures (1901). */
export const STANDARD_GRAVITY = 9.80665;

/** Density of sea water, kg/m³. Rounded from 1024.8 at 15 °C and 35 g/kg, EOS-80 (UNESCO 1983), from memory. */
export const SEA_WATER_DENSITY = 1025;

/** Density of air, kg/m³. ISO 2533:1975 standard atmosphere at sea level, 15 °C. */
export const AIR_DENSITY = 1.225;

/** Kinematic viscosity of sea water at 15 °C, m²/s. ITTC 7.5-02-01-03 gives 1.1892e-6, from memory. */
export const SEA_WATER_VISCOSITY = 1.19e-6;

/** Kinematic viscosity of air at 15 °C, m²/s. ISO 2533:1975 standard atmosphere at sea level. */
export const AIR_VISCOSITY = 1.4607e-5;

/** One international knot in m/s: 1852 m an hour, exact. */
export const KNOT = 1852 / 3600;
