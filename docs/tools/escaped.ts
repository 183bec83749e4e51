/** Text inside an element of HTML or SVG. */
export const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
