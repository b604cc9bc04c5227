-- Read by Neovim as it starts: the command and the kinds of files, whichever way the server is started.
require('fascicle').register()
