import { placesOf } from './table.ts';

/**
 * Measured normals. The U.S. rows are NOAA/NCEI data, U.S. Government work, public domain: computed from GHCN-Daily, or
 * the U.S. Climate Normals themselves, as each row says. Station heights: NCEI inventory, except West Palm Beach, Merced
 * and Lebanon, which are from memory. The precipitation of Central Park is from memory (normals 1991-2020).
 * Chicago was published in °F and inches.
 * Dublin: this project's monthly means of daily readings, © Met Éireann, licensed under CC BY 4.0; its position is from
 * memory.
 */
export const MEASURED_PLACES = placesOf(
  `
milwaukee-wi | Milwaukee | WI | USW00014839 | 42.95 -87.9 204 | -8.5 -6.91 -2.1 2.95 8.51 14.38 17.92 17.63 13.26 6.78 0.3 -5.25 | -1.13 0.72 6.23 12.14 18.67 24.38 27.19 26.35 22.54 15.76 8.19 1.72 | 45.5 42.9 56.0 98.0 89.9 111.2 86.3 92.8 80.3 70.5 57.0 48.1 | measured | measured | 1991-2020 | computed from NOAA GHCN-Daily
philadelphia-pa | Philadelphia | PA | USW00013739 | 39.87 -75.23 3 | -2.89 -2.05 1.73 7.23 12.77 18.15 21.31 20.42 16.52 9.98 4.23 -0.05 | 5.16 6.82 11.52 18.14 23.52 28.4 30.99 29.84 26.02 19.52 13.28 7.76 | 79.5 70.0 100.5 88.2 84.9 102.6 111.4 108.9 111.8 88.2 73.8 100.8 | measured | measured | 1991-2020 | computed from NOAA GHCN-Daily
baltimore-md | Baltimore | MD | USW00093721 | 39.17 -76.68 48 | -3.46 -2.62 1.28 6.59 11.99 17.18 20.03 18.96 15.09 8.29 2.66 -1.14 | 5.96 7.71 12.37 18.89 23.89 28.84 31.28 30.03 26.22 19.91 13.8 8.36 | 78.3 73.7 102.0 86.0 97.9 101.0 113.9 103.8 112.7 100.1 79.5 94.2 | measured | measured | 1991-2020 | computed from NOAA GHCN-Daily
west-palm-beach-fl | West Palm Beach | FL | USW00012844 | 26.68 -80.1 6 | 14.42 15.67 17.21 19.77 22.05 23.84 24.61 24.72 24.3 22.5 18.88 16.35 | 24.01 25.15 26.47 28.21 30.05 31.52 32.42 32.46 31.45 29.64 26.97 25.08 | 88.2 66.9 84.0 93.5 124.7 215.4 143.1 223.4 202.1 149.9 91.6 88.4 | measured | measured | 1991-2020 | computed from NOAA GHCN-Daily
merced-ca | Merced | CA | USC00045532+USW00023257 | 37.29 -120.51 47 | 3.06 4.27 6.03 7.72 11.18 14.33 16.8 15.97 13.66 9.52 5.07 2.64 | 13.12 16.57 19.86 23.36 28.27 32.71 35.81 35.08 32.51 26.54 18.75 13.23 | 61.6 53.9 47.4 26.5 13.8 3.2 0.2 0.1 1.2 16.9 27.2 47.6 | measured | measured | 1991-2020 | computed from NOAA GHCN-Daily
flagstaff-az | Flagstaff | AZ | USW00003103 | 35.14 -111.67 2134 | -7.99 -6.84 -4.52 -2.12 1.5 5.71 10.73 10.27 5.85 -0.18 -4.95 -8.35 | 6.33 7.57 11.39 15.1 20.01 26.17 27.77 26.15 23.36 17.42 11.02 6.16 | 53.5 56.4 45.7 22.6 20.0 8.1 67.2 79.6 48.8 41.3 35.5 48.5 | measured | measured | 1991-2020 | computed from NOAA GHCN-Daily
seattle-wa | Seattle | WA | USW00024233 | 47.44 -122.31 113 | 2.7 3.0 4.19 5.91 8.83 11.36 13.48 13.65 11.58 8.06 4.56 2.37 | 8.2 9.88 11.79 14.55 18.29 21.11 24.62 24.73 21.48 15.33 10.57 7.68 | 143.1 96.0 110.9 79.5 49.4 37.0 15.5 25.9 38.5 101.0 166.2 142.0 | measured | measured | 1991-2020 | computed from NOAA GHCN-Daily
lebanon-nh | Lebanon | NH | USW00094765 | 43.6264 -72.3047 171 | -12.61 -11.67 -6.28 -0.06 6.5 11.33 14.33 13.44 9.22 3.0 -2.39 -7.72 | -0.94 1.06 6.11 13.67 20.94 25.5 28.17 27.28 22.72 15.44 8.22 1.94 | 58.2 53.3 68.6 75.9 84.3 96.5 101.3 91.9 87.4 101.6 75.7 72.1 | measured | measured | 1991-2020 | NCEI U.S. Climate Normals
richmond-va | Richmond | VA | USW00013740 | 37.505 -77.3202 50 | -2.06 -0.83 2.83 7.83 12.78 18.06 20.5 19.67 15.61 9.06 4.11 -0.33 | 8.56 10.72 15.56 21.28 25.5 30.06 32.06 30.89 27.33 21.67 16.33 10.39 | 77.2 70.1 102.6 83.1 96.0 99.8 114.6 118.4 104.9 75.7 82.3 82.8 | measured | measured | 1981-2010 | NCEI U.S. Climate Normals
new-york-ny | New York Central Park | NY | USW00094728 | 40.7789 -73.9692 40 | -2.28 -1.34 2.11 7.5 12.77 18.0 21.16 20.5 16.84 10.78 5.55 1.0 | 4.17 5.73 9.94 16.56 21.89 26.5 29.39 28.5 24.56 18.06 12.22 6.83 | 92 81 109 101 101 115 117 116 109 111 91 111 | measured | from memory | 1991-2020 | monthly means of NCEI daily normals
chicago-il | Chicago | IL | USW00094846 | 42.00 -87.93 201 | -8.61 -6.61 -1.56 3.78 9.06 14.50 17.72 17.17 12.39 6.00 0.22 -6.28 | -0.56 1.83 8.11 15.00 21.11 26.50 28.94 27.72 23.78 16.83 9.00 1.56 | 43.9 45.5 63.5 85.9 93.5 87.6 94.0 124.5 81.5 80.0 80.0 57.1 | measured | measured | 1981-2010 | NCEI U.S. Climate Normals, read at stateclimatologist.web.illinois.edu
dublin-ie | Dublin Phoenix Park | Ireland | - | 53.36 -6.35 48 | 2.5 2.32 2.79 4.3 6.95 9.72 11.56 11.15 9.48 7.14 4.37 2.91 | 8.38 9 10.82 13.22 16.11 18.85 20.45 19.84 18.01 14.6 10.63 8.74 | 63.3 53.5 53.1 42.4 55.2 65.1 67.6 73.9 59.5 76.2 79.2 73.4 | derived | derived | 2004-2022 (to August) | monthly means of the daily readings of Met Éireann, CC BY 4.0
`,
  null,
);
