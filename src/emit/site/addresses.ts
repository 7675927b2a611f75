/** Where things of a site stand, and how somebody comes to follow a calendar of it. */

/** Files of one place, from the site's folder. */
export const filesOfPlace = (id: string) => ({
  page: `${id}/index.html`,
  feed: `${id}/${id}.ics`,
  changesText: `${id}/changes.txt`,
  changesFeed: `${id}/changes.xml`,
  embed: `${id}/embed.html`,
});

/** Ways to subscribe to one feed. */
export interface Subscribing {
  readonly https: string;
  readonly webcal: string;
  readonly google: string;
}

/**
 * The addresses of a feed. A `webcal:` address opens the dialog of the device's calendar, where the plain one is taken in once;
 * Google's page to add by address takes a `webcal:` address alone. Others have no address to add by, only a form of their own.
 *
 * @param baseUrl Ends in a slash.
 * @example subscribingTo('https://lawns.example/', 'mill/mill.ics').webcal //=> 'webcal://lawns.example/mill/mill.ics'
 */
export function subscribingTo(baseUrl: string, feed: string): Subscribing {
  const https = `${baseUrl}${feed}`;
  const webcal = https.replace(/^https?:/, 'webcal:');
  return { https, webcal, google: `https://calendar.google.com/calendar/r?cid=${encodeURIComponent(webcal)}` };
}
