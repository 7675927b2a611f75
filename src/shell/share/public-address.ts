import { BlockList, isIP } from 'node:net';

/**
 * IPv4 networks that are not the public internet: this network, private use, shared by carriers, this machine, link-local, IETF
 * protocols, documentation, relays, benchmarks, multicast, reserved.
 * Source: IANA IPv4 Special-Purpose Address Registry (RFC 6890) and RFC 1112, RFC 5771.
 */
const CLOSED_4 = [
  '0/8',
  '10/8',
  '100.64/10',
  '127/8',
  '169.254/16',
  '172.16/12',
  '192.0/24',
  '192.0.2/24',
  '192.88.99/24',
  '192.168/16',
  '198.18/15',
  '198.51.100/24',
  '203.0.113/24',
  '224/4',
  '240/4',
] as const;
/**
 * Of IPv6 only what is given out to the public is open (2000::/3), and of that neither what holds an IPv4 address (2002::/16,
 * Teredo in 2001::/23), nor IETF protocols, nor documentation. IPv4-mapped (::ffff:0:0/96), translated (64:ff9b::/96),
 * unique-local (fc00::/7), link-local (fe80::/10) and multicast (ff00::/8) lie outside of 2000::/3.
 * Source: IANA IPv6 Global Unicast Address Assignments and Special-Purpose Address Registry (RFC 6890, RFC 9637).
 */
const CLOSED_6 = ['2001::/23', '2001:db8::/32', '2002::/16', '3fff::/20'] as const;

const listOf = (networks: readonly string[], family: 'ipv4' | 'ipv6'): BlockList => {
  const list = new BlockList();
  for (const network of networks) {
    const [start = '', bits] = network.split('/');
    list.addSubnet(
      family === 'ipv4' ? [...start.split('.'), 0, 0, 0].slice(0, 4).join('.') : start,
      Number(bits),
      family,
    );
  }
  return list;
};
const closed4 = listOf(CLOSED_4, 'ipv4');
const open6 = listOf(['2000::/3'], 'ipv6');
const closed6 = listOf(CLOSED_6, 'ipv6');

/** Whether an IP address is one of the public internet. @example isPublic('::1') //=> false */
export function isPublic(address: string): boolean {
  switch (isIP(address)) {
    case 4:
      return !closed4.check(address, 'ipv4');
    case 6:
      return !address.includes('%') && open6.check(address, 'ipv6') && !closed6.check(address, 'ipv6');
    default:
      return false;
  }
}
