import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { Html, html } from '../html.ts';
import { siteStyle } from './style.ts';

/** A page of the site. */
interface Page {
  readonly language: string;
  readonly title: string;
  readonly body: Html;
  /** Further lines of its head. */
  readonly head?: Html | null;
  /** Its one script; the page is whole without it. */
  readonly script?: string;
  /** Whether search engines are to leave it out. */
  readonly hidden?: boolean;
}

/** A whole page: it loads nothing, its policy forbids it to, and no other script than its own runs in it. */
export function sitePage({ language, title, body, head = null, script, hidden = false }: Page): string {
  const policy = `default-src 'none'; style-src 'unsafe-inline'${script === undefined ? '' : `; script-src 'sha256-${fingerprint(script)}'`}`;
  const page = html`<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${new Html(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
${hidden ? html`<meta name="robots" content="noindex">\n` : null}<title>${title}</title>
${head}<style>${new Html(siteStyle)}</style>
</head>
<body>
${body}
${script === undefined ? null : html`<script>${new Html(script)}</script>\n`}</body>
</html>
`;
  return page.text;
}

/** Source: W3C (2016), Content Security Policy Level 2, 4.2.4: base64 of the SHA-256 of what stands between the tags. */
const fingerprint = (script: string): string => btoa(String.fromCharCode(...sha256(utf8ToBytes(script))));
