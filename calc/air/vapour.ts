/** Volume of one mole of an ideal gas at 25 degC and 101 325 Pa (m3/mol), as agencies take it for limits in the air. Source: NIOSH Pocket Guide, introduction, from memory. */
export const MOLAR_VOLUME_OF_LIMITS = 0.02445;

/**
 * What a share of a vapour in the air weighs.
 * @param share volume of vapour over volume of air (1e-6 is 1 ppm)
 * @param molarMass of the vapour, kg/mol
 * @param molarVolume of the air, m3/mol
 * @returns kg of vapour in a m3 of air
 * Source: ideal gas law.
 */
export const vapourDensity = (share: number, molarMass: number, molarVolume = MOLAR_VOLUME_OF_LIMITS): number =>
  (share * molarMass) / molarVolume;
