/**
 * What a page of this app may load and send: nothing but from its own origin. The build writes it into the page, the
 * server of `npm start` sends it with every file.
 */
export const CONTENT_POLICY = "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'";
