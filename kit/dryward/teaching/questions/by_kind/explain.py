"""The kind that a person marks: explain it to a client, in one picture and three sentences."""

from dryward.teaching.questions.question import Question

#: What the instructor looks for, 0 to 2 points each.
RUBRIC = (
    "names the driving force: vapor pressure, or air that moves",
    "names the face at risk",
    "says how it dries in the other season",
    "takes air before vapor",
    "states one limit of the model",
    "uses units",
)

_ASKS = (
    "Why did my new roof get wet when it has vents?",
    "Why do you tape the film so carefully and then leave the outside open?",
    "Why must the bathroom fan run when the house is so new?",
    "Why not put plastic on both sides, to be sure?",
    "Why is there frost under the metal when the attic is dry?",
    "Why can I not fill the space with the wires with insulation?",
)


def explain(draw):
    """A client's question, to be answered with a drawing."""
    asked = draw.pick(_ASKS[0], _ASKS)
    draw.note(asked=asked)
    prompt = f'A client asks: "{asked}" Answer in one drawing and three sentences.'
    return Question(draw.kind, prompt, (), draw.seed, "; ".join(RUBRIC), given=dict(draw.given))
