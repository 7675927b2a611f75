/** International pound (1959) [kg], exact. */
export const LB = 0.45359237;
/** International foot (1959), squared [m²], exact. */
export const SQFT = 0.3048 ** 2;
/** 1 lb/1000 ft² [g/m²]: 4.88243. */
export const LB_PER_1000_SQFT = (1000 * LB) / (1000 * SQFT);
