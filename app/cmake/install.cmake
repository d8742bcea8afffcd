# SPDX-License-Identifier: GPL-3.0-or-later
# What `cmake --install` puts on a machine: the program, and what a desktop and a shell want to know of it.
include(GNUInstallDirs)
find_program(GZIP gzip REQUIRED)
set(here ${PROJECT_SOURCE_DIR}/app/installed)

# Pages and changes are read pressed; without a date in them the same source gives the same file.
function(staveline_press file to)
  add_custom_command(OUTPUT ${to} COMMAND ${GZIP} -9nc ${file} > ${to} DEPENDS ${file} VERBATIM)
endfunction()

configure_file(${here}/staveline.1.in ${PROJECT_BINARY_DIR}/staveline.1 @ONLY)
staveline_press(${PROJECT_BINARY_DIR}/staveline.1 ${PROJECT_BINARY_DIR}/staveline.1.gz)
staveline_press(${PROJECT_SOURCE_DIR}/CHANGELOG.md ${PROJECT_BINARY_DIR}/changelog.gz)
add_custom_target(pressed ALL DEPENDS ${PROJECT_BINARY_DIR}/staveline.1.gz ${PROJECT_BINARY_DIR}/changelog.gz)

install(TARGETS staveline)
install(FILES ${PROJECT_BINARY_DIR}/staveline.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${here}/completion.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME staveline)
install(FILES ${here}/copyright ${PROJECT_BINARY_DIR}/changelog.gz DESTINATION ${CMAKE_INSTALL_DOCDIR})
if(STAVELINE_WINDOW)
  install(FILES ${here}/staveline.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
  install(FILES ${here}/staveline.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
  install(FILES ${here}/staveline-mime.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages RENAME staveline.xml)
  install(FILES ${PROJECT_SOURCE_DIR}/resources/icons/staveline.svg
    DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
endif()
