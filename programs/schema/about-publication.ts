import type { About } from '../../src/emit/json-schema.ts';

/** A sentence on each key of a publication that other files have not. */
export const aboutPublication: About = {
  'publication.about': ['A sentence on the first page of the site.', 'One program for all of the island.'],
  'publication.base-url': [
    'Where the site will stand. Without it the pages have no links to subscribe by, no QR codes and no snippet.',
    'https://lawns.example/',
  ],
  'publication.programs': [
    'Program files, from the folder of this one. A place takes the first one for its grass whose climate it has.',
    ['programs/tall-fescue-transition.yaml'],
  ],
  'publication.places': [
    'Places that get a page and a calendar each. All that stands here is public but the position.',
  ],
  'publication.places-file': [
    'A table of places: id, name, grass, and latitude and longitude or zip, and program, in columns of any order.',
    'places.csv',
  ],
  'publication.lawns': ['Lawn files whose owners get a page and a calendar at an address that nobody guesses.'],
  'publication.lawns-file': ['A table of lawn files, in one column "file".', 'lawns.csv'],
  'publication.thermometers': [
    'Thermometers and weather stations that serve the places and lawns near them; the nearest one does, and what a lawn has of its own goes first.',
  ],
  'publication.embed': ['Whether each place has a small page to be shown inside of other pages.'],
  'publication.changelog': ['What changed in the programs, a line a change, shown on every page of a place.'],
  'places.zip': ['A U.S. ZIP code of five digits that stands for the position.', '00000'],
  'places.grass': ['The grass, by which the place gets its program.'],
  'places.program': ['A program of its own.', 'shade.yaml'],
  'thermometers.reach': ['How far it serves.', '20 km', '15 mi'],
  'thermometers.readings': ['What it read.'],
  'readings.date': ['The day of the reading.', '2027-03-14'],
  'readings.depth': ['How deep it stood, from 5 to 50 cm.', '2 in', '5 cm'],
  'thermometers.weather': ['A file of daily weather of a station.', 'station.csv'],
};
