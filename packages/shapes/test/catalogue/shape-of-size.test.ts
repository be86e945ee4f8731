import { describe, expect, test } from "vitest";
import {
  catalogue,
  outlineOf,
  resized,
  type Shape,
  ShapeError,
  type ShapeName,
  shapeOfSize,
  sizeOf,
} from "../../src/index.js";
import { shapesOfSize } from "./sized-shapes.js";

const INCH = 40_640;

describe("shapes of a nominal size", () => {
  test("are the diameter of the circle round them, or width by height", () => {
    expect(sizeOf(shapeOfSize("star", 3 * INCH))).toEqual({ diameter: 3 * INCH });
    expect(sizeOf(shapeOfSize("polygon", 3 * INCH, { sides: 6 }))).toEqual({ diameter: 3 * INCH });
    expect(sizeOf(shapeOfSize("tag", { width: 2 * INCH, height: 4 * INCH }))).toEqual({
      width: 2 * INCH,
      height: 4 * INCH,
    });
    expect(sizeOf(shapeOfSize("square", { width: INCH, height: INCH }))).toEqual({
      width: INCH,
      height: INCH,
    });
  });

  test("all but polygons and frames need nothing but a size", () => {
    const names = catalogue.map(({ id }) => id).filter((id) => id !== "frame" && id !== "polygon");
    for (const name of names as Exclude<ShapeName, "frame" | "polygon">[]) {
      const takesOne = catalogue
        .find(({ id }) => id === name)
        ?.parameters.every(({ key }) => key !== "width");
      const shape = shapeOfSize(name, takesOne === true ? 3 * INCH : { width: 2 * INCH, height: 3 * INCH });
      expect(outlineOf(shape).outer.length, name).toBeGreaterThan(1);
    }
  });

  test("refuse a name that is none, and two sides for what has one", () => {
    expect(() => shapeOfSize("blob" as "circle", INCH)).toThrow(ShapeError);
    expect(() => shapeOfSize("toString" as "circle", INCH)).toThrow(ShapeError);
    expect(() => shapeOfSize("circle", { width: INCH, height: 2 * INCH })).toThrow(ShapeError);
  });
});

describe("a shape in another size", () => {
  test("keeps all but its size", () => {
    for (const shape of shapesOfSize(3 * INCH)) {
      if (shape.shape === "frame") continue;
      expect(resized(shape, sizeOf(shape))).toEqual(shape);
      const larger = resized(
        shape,
        "diameter" in sizeOf(shape) || "side" in shape ? 4 * INCH : { width: 4 * INCH, height: 5 * INCH },
      );
      expect({ ...larger, ...sizeOf(shape) }).toMatchObject(sizeOf(shape));
      expect(larger.shape).toBe(shape.shape);
    }
    expect(resized({ shape: "star", diameter: INCH, points: 7 }, 2 * INCH)).toEqual({
      shape: "star",
      diameter: 2 * INCH,
      points: 7,
    });
  });

  test("as a frame keeps its border", () => {
    const frame: Shape = {
      shape: "frame",
      outer: { shape: "rectangle", width: 4 * INCH, height: 5 * INCH },
      window: { shape: "oval", width: 3 * INCH, height: 4 * INCH },
    };
    expect(resized(frame, { width: 5 * INCH, height: 7 * INCH })).toMatchObject({
      window: { shape: "oval", width: 4 * INCH, height: 6 * INCH },
    });
  });
});

describe("the table of the catalogue", () => {
  test("tells a title, a sentence and every parameter of each shape", () => {
    for (const { id, title, about, parameters, symmetry } of catalogue) {
      expect(title, id).toMatch(/^[A-Z]/);
      expect(about, id).toMatch(/^[A-Z].*\.$/);
      expect(symmetry, id).not.toBe("");
      for (const parameter of parameters) {
        expect(parameter.meaning, id).toMatch(/^[A-Z].*\.$/);
        expect(parameter.default, id).not.toBe("");
        expect(parameter.range, id).not.toBe("");
        expect(parameter.kind === "word", `${id} ${parameter.key}`).toBe("words" in parameter);
      }
    }
    expect(new Set(catalogue.map(({ id }) => id)).size).toBe(catalogue.length);
  });

  test("marks what a nominal size sets, and no more", () => {
    for (const shape of shapesOfSize(INCH)) {
      if (shape.shape === "frame") continue;
      const sized = catalogue
        .find(({ id }) => id === shape.shape)
        ?.parameters.filter((parameter) => parameter.isSize)
        .map(({ key }) => key);
      const bare = shapeOfSize(shape.shape as "circle", INCH);
      expect(sized, shape.shape).toEqual(Object.keys(bare).filter((key) => key !== "shape"));
    }
  });

  test("names every parameter that the examples use", () => {
    for (const shape of shapesOfSize(INCH)) {
      const keys = catalogue.find(({ id }) => id === shape.shape)?.parameters.map(({ key }) => key) ?? [];
      expect([...keys, "shape"]).toEqual(expect.arrayContaining(Object.keys(shape)));
    }
  });

  test("names as required what a shape cannot do without", () => {
    for (const shape of shapesOfSize(3 * INCH)) {
      const entry = catalogue.find(({ id }) => id === shape.shape);
      for (const { key, default: usual } of entry?.parameters ?? []) {
        const make = () => outlineOf({ ...shape, [key]: undefined } as Shape);
        if (usual === "required") expect(make, `${shape.shape} ${key}`).toThrow();
      }
    }
  });
});
