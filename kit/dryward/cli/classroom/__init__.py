"""The lessons as web pages for a class: who comes in, whose answers are whose, kernels kept ready.

`learners` knows the learners' folders, `door` lets them in, `kernels` keeps
Python processes ready, `handlers` answers the addresses and `server` puts
them together.  The pages themselves are in ``share/voila/templates``.
"""
