// A job as it is written, and the places of its posts.
import { exact } from "./lengths.js";

/**
 * The job with one post elsewhere.
 *
 * A post that the job lists is moved where it stands. Where it comes from a table or a grid, the slope's
 * posts are written out one by one first, to the nanometre.
 *
 * @param {object} job the job file's document; it is left as it is
 * @param {number} slope number of the slope in the job, from 0
 * @param {object} takeoff the takeoff of that job
 * @param {string} name the post's name
 * @param {{ u?: string, v?: string }} place what is typed of its new place
 */
export function moved(job, slope, takeoff, name, place) {
  const copy = structuredClone(job);
  const written = copy.slopes[slope];
  if (!listed(written, name)) {
    written.posts = takeoff.slopes[slope].posts.map(({ name, assembly, u_mm, v_mm }) =>
      listed(written, name) ?? { name, assembly, u: exact(u_mm), v: exact(v_mm) });
    delete written.post_grids;
  }
  Object.assign(listed(written, name), place);
  return copy;
}

/** What the job writes of a post; nothing where it comes from a table or a grid. */
export function listed(slope, name) {
  return Array.isArray(slope.posts) ? slope.posts.find((post) => post.name === name) : undefined;
}

/** JSON Pointer (RFC 6901) to a post; nothing where the job does not list the post. */
export function pointer(job, slope, name) {
  const post = listed(job.slopes[slope], name);
  return post && `/slopes/${slope}/posts/${job.slopes[slope].posts.indexOf(post)}`;
}
