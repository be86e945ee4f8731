import * as cards from "@sheetwright/cards";
import { testDocExamples, testReadme } from "../../measure/test/check-doc-examples.js";
import * as planner from "../src/index.js";

// The examples in doc comments read their projects with the package of cards, under its name.
testDocExamples(new URL("../src/", import.meta.url), { ...planner, cards });
testReadme(new URL("../README.md", import.meta.url), { ...cards, ...planner });
