import { error, type Found, warning } from './forms.ts';

/** Problems of serving a written site. */
export const serve = {
  'serve-option-port': error((a: Found) => `"${a.found}" is not a port. Write a number from 0 to 65535.`),
  'serve-folder': error((a: { folder: string; found: 'file' | 'nothing' }) =>
    a.found === 'file'
      ? `"${a.folder}" is a file; serve takes a folder. Name the one that the file lies in.`
      : `There is no folder "${a.folder}". Run "soilclock plan" first, or name the folder that it wrote to.`,
  ),
  'serve-port-taken': error(
    (a: { port: number }) =>
      `Port ${a.port} is taken by another program, perhaps by another "soilclock serve". End that one, or take another port: --port ${a.port === 65_535 ? a.port - 1 : a.port + 1}.`,
  ),
  'serve-port-forbidden': error(
    (a: { port: number }) => `This user may not open port ${a.port}. Take one above 1023, such as --port 8743.`,
  ),
  'serve-host': error(
    (a: { host: string; reason: string }) =>
      `"${a.host}" cannot be served (${a.reason}). Give an address of this machine, or 0.0.0.0 for all of its networks.`,
  ),
  'serve-no-feed': warning(
    (a: { folder: string }) =>
      `There is no feed in "${a.folder}" yet. Run "soilclock plan"; it is served as soon as it is there.`,
  ),
} as const;
