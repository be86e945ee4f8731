import { paper } from "./build.js";

/** The papers of the invented Lantern Night workshop. */
export const papers = [
  paper({ id: "night", colour: "#22304f", name: "Night blue" }),
  paper({ id: "cream", colour: "#f6efdc", name: "Cream" }),
  paper({ id: "ember", colour: "#c8552f", name: "Ember" }),
  paper({ id: "copper", colour: "#b9794a", name: "Copper glitter", material: "glitter" }),
  paper({
    id: "stars",
    colour: "#dfe6ee",
    name: "Star pad",
    material: "pad",
    designs: [
      { id: "dots", colour: "#dbe4ef", name: "Dots", pattern: "two-way" },
      { id: "comets", colour: "#8fa9c9", name: "Comets", pattern: "one-way" },
      { id: "plain-sky", colour: "#5b7aa6", name: "Plain sky" },
    ],
  }),
];
