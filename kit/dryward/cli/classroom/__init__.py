"""The lessons as web pages for a class: who comes in, whose answers are whose, kernels kept ready.

`learners` knows the learners' folders, `door` lets them in, `kernels` keeps
Python processes ready, `opening` makes a lesson's page on one, `handlers` and
`files` answer the addresses and `server` puts them together.  The pages
themselves are in ``share/voila/templates``.  `hub`, `register` and `memory`
are the class server with a JupyterLab for each learner.
"""
