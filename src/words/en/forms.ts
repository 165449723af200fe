/** Texts of one area of the page; functions where a figure or a name stands in them. */
export const forms = {};
