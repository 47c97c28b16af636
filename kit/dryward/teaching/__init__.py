"""What is asked and said: lessons, beliefs, questions, words, arithmetic, progress.

`lessons` is the list of lessons with their words, `beliefs` what builders
hold and what is right, `questions` the checks of a lesson, `kinds` the
generator, `paper` the printed quiz, `practical` the "set the sliders so that ..." tasks, `progress`
the learner's own file.
"""
