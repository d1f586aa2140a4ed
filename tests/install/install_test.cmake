# Installs what was built into a fresh prefix, builds the small project of this folder against it alone, and runs that.
#
#     cmake -DBUILT=... -DPROJECT=... -DCOMPILER=... -DFLAGS=... -DTYPE=... -DGENERATOR=... -DLAUNCHER=... -P install_test.cmake
set(work ${BUILT}/tests/install_work)
file(REMOVE_RECURSE ${work})

execute_process(COMMAND ${CMAKE_COMMAND} --install ${BUILT} --prefix ${work}/prefix OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} -S ${PROJECT} -B ${work}/build -G ${GENERATOR} -DCMAKE_PREFIX_PATH=${work}/prefix
  -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_CXX_FLAGS=${FLAGS} -DCMAKE_BUILD_TYPE=${TYPE} -DCMAKE_CXX_COMPILER_LAUNCHER=${LAUNCHER}
  -DCMAKE_FIND_USE_PACKAGE_REGISTRY=OFF OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} --build ${work}/build COMMAND_ERROR_IS_FATAL ANY)

# expect(STATUS OUTPUT ARGUMENT...): what the small program does.
function(expect status output)
  execute_process(COMMAND ${work}/build/read_amount ${ARGN} OUTPUT_VARIABLE said RESULT_VARIABLE ended OUTPUT_STRIP_TRAILING_WHITESPACE)
  if(NOT ended STREQUAL status OR NOT said STREQUAL output)
    message(FATAL_ERROR "read_amount ${ARGN}: status ${ended} and '${said}', expected ${status} and '${output}'")
  endif()
endfunction()
expect(0 "800 g" "2 x 400 g")
expect(0 "375 mL" "1 1/2 cups")
expect(0 "some" "some")

# The program, from where it was installed, with the data that was installed.
execute_process(COMMAND ${CMAKE_COMMAND} -E env SAMEBASE_DATA=${work}/prefix/share/samebase ${work}/prefix/bin/samebase check --data
  OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(REMOVE_RECURSE ${work})
