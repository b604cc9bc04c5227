" fascicle for ALE; see autoload/fascicle.vim.
call fascicle#Define("text")
