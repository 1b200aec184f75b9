/**
 * An SVG picture as an address that can stand in a Markdown image: signs that end or split such an address are
 * written as percent codes, the others stay, which is shorter than base64 for pictures of few elements. Editors print
 * an address that is too long as text (microsoft/vscode issue 212565), so pictures are kept small by those who draw them.
 * @example svgDataUri("<svg xmlns='http://www.w3.org/2000/svg'/>")
 *   // "data:image/svg+xml,%3Csvg%20xmlns='http://www.w3.org/2000/svg'/%3E"
 */
export function svgDataUri(svg: string): string {
  const escaped = svg.replace(/[^A-Za-z0-9.,;:=/'+*!_-]/gu, (sign) =>
    // encodeURIComponent leaves brackets, which would end a Markdown address.
    sign === '(' ? '%28' : sign === ')' ? '%29' : encodeURIComponent(sign),
  );
  return `data:image/svg+xml,${escaped}`;
}
