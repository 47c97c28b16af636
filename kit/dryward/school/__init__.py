"""The lessons for a class: who comes in, whose answers are whose, kernels kept ready, how the class stands.

`folders` knows where lessons and answers lie, `learners` lets them in,
`kernels` keeps Python processes ready, `handlers` answers the addresses and
`server` puts them together; `standing` says where learners are.  The pages
themselves are in ``share/voila/templates``.  `hub` is the class server with
a JupyterLab for each learner, and `lab` what any JupyterLab is told.
"""
