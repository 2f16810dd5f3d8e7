/** `bellcrank/newCarQuestions` and `bellcrank/newCar`: what is asked for a new car, and its files. */
import { isAsked, type NewCar, questions, usual, whyNoName, yesOrNo } from "../../views/new-car/answers.js";
import { newCarFiles } from "../../views/new-car/new-car.js";
import type { Feature } from "../feature.js";
import type {
  NewCarAnswer,
  NewCarMethod,
  NewCarParams,
  NewCarQuestions,
  NewCarQuestionsMethod,
} from "../protocol-start.js";

const asking: NewCarQuestionsMethod = "bellcrank/newCarQuestions";
const making: NewCarMethod = "bellcrank/newCar";

export const newCar: Feature = {
  capabilities: {},
  attach(connection) {
    connection.onRequest(asking, asked);
    connection.onRequest(making, made);
  },
};

function made({ name, title, answers }: NewCarParams): NewCarAnswer {
  const why = whyNoName(name);
  if (why !== undefined) return { files: [], why };
  return { files: newCarFiles({ ...usual, ...known(answers), name, title: title === "" ? name : title }) };
}

const CORNERS = ["hardpoints", "planar", "ratio"] as const;

const asked = (): NewCarQuestions => ({
  choices: questions.map(({ of, asks, options }) => ({
    of,
    asks,
    options,
    notFor: CORNERS.filter((corner) => !isAsked(of, corner)),
  })),
  yesOrNo: yesOrNo.map(({ of, asks }) => ({ of, asks, usual: usual[of] })),
});

/** Only answers that were offered. */
function known(answers: NewCarParams["answers"]): Partial<NewCar> {
  const chosen = questions.flatMap(({ of, options }) =>
    options.some(({ value }) => value === answers[of]) ? [[of, answers[of]]] : [],
  );
  const said = yesOrNo.flatMap(({ of }) => (typeof answers[of] === "boolean" ? [[of, answers[of]]] : []));
  return Object.fromEntries([...chosen, ...said]) as Partial<NewCar>;
}
