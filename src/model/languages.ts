/** The languages in which a plan is told, by region: it decides how days, numbers and money are written. */
export const LANGUAGES = ['en', 'en-US', 'en-GB', 'en-CA', 'en-AU', 'es', 'es-ES', 'es-MX', 'es-US', 'es-419'] as const;
