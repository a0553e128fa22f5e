// The words for what a takeoff says by kind.

export const SITUATIONS = {
  none: "no tile there",
  one_tile_hole: "one tile, hole",
  one_tile_edge: "one tile, edge",
  two_side_by_side: "two tiles side by side",
  two_courses: "two tiles of two courses",
  three: "three tiles",
  four_or_more: "four or more tiles",
};

export const SIDES = { left: "left", nose: "nose", right: "right", head: "head", field_edge: "the field's edge" };

export const COUNTS = {
  posts: "posts",
  holes: "tiles with a hole",
  notches: "tiles with a notch",
  corners: "tiles with a corner cut away",
  severed: "tiles severed",
  posts_on_several_tiles: "posts that cut several tiles",
  removed: "tiles taken up",
  loosened: "tiles loosened",
  harvested: "tiles taken from under the arrays",
  tucked: "flashings tucked",
  patched: "flashings patched",
  patches: "patches",
  three_course: "flashings with three-course work",
};
